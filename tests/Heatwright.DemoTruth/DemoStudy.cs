using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heatwright.DemoTruth;

/// <summary>Writes the demo study as a bundle in folder form: study.json and runs/*.csv.</summary>
public static class DemoStudy
{
    private static readonly JsonSerializerOptions Plain = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(string folder, Hidden hidden, int rename = 0)
    {
        var names = new Names(rename);
        var bench = new Bench(hidden["seed"]);
        var trials = Trials(hidden, bench);
        var study = new JsonObject
        {
            ["format"] = "heatwright-bundle-1",
            ["name"] = rename == 0 ? "rope hot knife" : names.Of("rope hot knife"),
            ["note"] = "Demo. Every reading, label and price here is invented: made by a simulation with a hidden truth, not taken on a bench. "
                + "Lithium cells, a hot edge and fumes of melting rope are dangerous; local rules and licensed practice come first.",
            ["seed"] = 4711,
            ["invented"] = true,
            ["brief"] = BriefText.Json(names, hidden),
            ["instruments"] = List(bench.All, Instrument),
            ["parts"] = List(Shelf.Parts, part => Part(part, names)),
            ["trials"] = List(trials, trial => Trial(trial, names)),
            ["arrangements"] = List(Truth.Wirings, wiring => Arrangement(wiring, names)),
        };

        Directory.CreateDirectory(Path.Combine(folder, "runs"));
        File.WriteAllText(Path.Combine(folder, "study.json"), study.ToJsonString(Plain) + "\n");
        foreach (var run in trials.SelectMany(trial => trial.Runs))
        {
            File.WriteAllText(Path.Combine(folder, "runs", names.Of(run.Id) + ".csv"), run.Csv());
        }
    }

    private static IReadOnlyList<DemoTrial> Trials(Hidden hidden, Bench bench)
    {
        var cells = new CellRuns(hidden, bench);
        var heaters = new HeaterRuns(hidden, bench);
        var small = new SmallRuns(hidden, bench);
        return
        [
            new("round-discharge", "discharge", "round", "what charge it really holds", [cells.Discharge("round", looseClip: true)]),
            new("round-pulses", "pulse", "round", "its ohms over the charge", [cells.Pulses("round", [2, 3, 4])]),
            new("iron-discharge", "discharge", "iron", "what charge it really holds", [cells.Discharge("iron", looseClip: false)]),
            new("iron-pulses", "pulse", "iron", "its ohms over the charge", [cells.Pulses("iron", [2, 4, 6])]),
            .. Heater("stick", 7.3, 4.7, [2.4, 3.3, 4.1, 4.7]),
            .. Heater("cartridge", 12.6, 8.8, [4.0, 6.0, 7.5, 8.8]),
            .. Heater("ribbon", 3.1, 1.75, [0.8, 1.2, 1.5, 1.75]),
            new("module-points", "modulePoints", "module", "what it loses", [small.Module()]),
            new("leads-drop", "twoPointDrop", "leads", "ohms out and back", [small.Drop("leads", 1, slip: true)]),
            new("tabs-drop", "twoPointDrop", "tabs", "ohms of one touch, over four of them", [small.Drop("tabs", 4, slip: false)]),
        ];

        IEnumerable<DemoTrial> Heater(string name, double upV, double holdV, double[] heldV) =>
        [
            new(name + "-cold", "coldOhms", name, "ohms cold", [heaters.Cold(name, overload: name == "cartridge")]),
            new(name + "-hot", "hotOhms", name, "ohms hot", [heaters.Hot(name, heldV)]),
            new(name + "-warm-up", "warmUp", name, "heat it takes and loses, and what the grip gets",
                [heaters.UpAndDown(name, upV), heaters.Hold(name, holdV), .. name == "cartridge" ? [heaters.ByHand(name, holdV)] : Array.Empty<DemoRun>()]),
        ];
    }

    private static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode> json) => new([.. items.Select(item => json(item))]);

    private static JsonObject Instrument(BenchMeter meter) => new()
    {
        ["id"] = meter.Id,
        ["name"] = meter.Name,
        ["specs"] = List(meter.Specs, spec => new JsonObject
        {
            ["unit"] = spec.Unit,
            ["percent"] = spec.Percent,
            ["offset"] = spec.Offset,
            ["resolution"] = spec.Resolution,
        }),
    };

    private static JsonObject Part(DemoPart part, Names names) => new()
    {
        ["id"] = names.Of(part.Id),
        ["kind"] = part.Kind,
        ["name"] = names.Of(part.Name),
        ["count"] = part.Count,
        ["from"] = part.From,
        ["words"] = new JsonObject(part.Words.Select(word => KeyValuePair.Create(word.Key, (JsonNode?)word.Value))),
        ["note"] = part.Note,
        ["stated"] = List(part.Stated, said => new JsonObject
        {
            ["quantity"] = said.Quantity,
            ["value"] = said.Value,
            ["unit"] = said.Unit,
            ["plusMinus"] = said.PlusMinus,
            ["origin"] = said.Origin,
            ["text"] = said.Text,
        }),
    };

    private static JsonObject Trial(DemoTrial trial, Names names) => new()
    {
        ["id"] = names.Of(trial.Id),
        ["kind"] = trial.Kind,
        ["part"] = names.Of(trial.Part),
        ["purpose"] = trial.Purpose,
        ["runs"] = List(trial.Runs, run => new JsonObject
        {
            ["id"] = names.Of(run.Id),
            ["columns"] = List(run.Columns, column => new JsonObject { ["name"] = column.Name, ["unit"] = column.Unit, ["instrument"] = column.By.Id }),
            ["settings"] = new JsonObject(run.Settings.Select(setting => KeyValuePair.Create(setting.Key, (JsonNode?)setting.Value))),
            ["struck"] = new JsonArray(),
        }),
    };

    private static JsonObject Arrangement(Wiring wiring, Names names)
    {
        string name = wiring switch
        {
            { StepUp: true } => "one round cell through a step-up into the cartridge",
            { Cell: "iron" } => "iron-phosphate pair straight on the ribbon under a duty ceiling",
            { Series: 2 } => "two round cells in series straight on the stick",
            _ => "one round cell straight on the ribbon through the spring holder",
        };
        var json = new JsonObject
        {
            ["id"] = names.Of("arrangement-" + wiring.Letter),
            ["letter"] = names.Letter(wiring.Letter),
            ["name"] = names.Of(name),
            ["cell"] = names.Of(wiring.Cell),
            ["series"] = wiring.Series,
            ["parallel"] = 1,
            ["heater"] = names.Of(wiring.Heater),
            ["switch"] = names.Of("switch"),
            ["leads"] = names.Of("leads"),
            ["contacts"] = names.Of(wiring.Contacts),
            ["contactCount"] = wiring.ContactCount,
            ["sensor"] = names.Of("sensor"),
            ["controller"] = names.Of("controller"),
            ["handle"] = names.Of("handle"),
        };
        Add("supervision", wiring.Supervision ? "supervision" : null);
        Add("stepUp", wiring.StepUp ? "module" : null);
        Add("charger", wiring.Cell == "iron" ? "charger-iron" : wiring.Series == 1 ? "charger-round" : null);
        Add("cutOut", wiring.Cell == "iron" ? null : "cutout");
        json["dutyCeiling"] = wiring.DutyCeiling;
        return json;

        void Add(string field, string? part)
        {
            if (part is not null)
            {
                json[field] = names.Of(part);
            }
        }
    }
}
