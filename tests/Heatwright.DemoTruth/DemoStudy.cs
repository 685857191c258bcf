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
        var scene = hidden.Scene;
        var trials = scene.Trials(hidden, bench);
        var study = new JsonObject
        {
            ["format"] = "heatwright-bundle-1",
            ["name"] = names.Of(scene.Name),
            ["note"] = scene.Note,
            ["seed"] = scene.Seed,
            ["invented"] = true,
            ["brief"] = scene.Brief(names, hidden),
            ["instruments"] = List(bench.All, Instrument),
            ["parts"] = List(scene.Parts, part => Part(part, names)),
            ["trials"] = List(trials, trial => Trial(trial, names)),
            ["arrangements"] = List(scene.Wirings, wiring => Arrangement(wiring, names)),
        };

        Directory.CreateDirectory(Path.Combine(folder, "runs"));
        File.WriteAllText(Path.Combine(folder, "study.json"), study.ToJsonString(Plain) + "\n");
        foreach (var run in trials.SelectMany(trial => trial.Runs))
        {
            File.WriteAllText(Path.Combine(folder, "runs", names.Of(run.Id) + ".csv"), run.Csv());
        }
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

    private static JsonObject Trial(DemoTrial trial, Names names)
    {
        var json = TrialOf(trial, names);
        if (trial.Card is { } card)
        {
            json["card"] = card;
        }

        return json;
    }

    private static JsonObject TrialOf(DemoTrial trial, Names names) => new()
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
        var json = new JsonObject
        {
            ["id"] = names.Of("arrangement-" + wiring.Letter),
            ["letter"] = names.Letter(wiring.Letter),
            ["name"] = names.Of(wiring.Name),
            ["cell"] = names.Of(wiring.Cell),
            ["series"] = wiring.Series,
            ["parallel"] = wiring.Parallel,
            [wiring.IsLamp ? "lamp" : "heater"] = names.Of(wiring.Heater),
            ["switch"] = names.Of("switch"),
            ["leads"] = names.Of("leads"),
            ["contacts"] = names.Of(wiring.Contacts),
            ["contactCount"] = wiring.ContactCount,
        };
        if (!wiring.IsLamp)
        {
            json["sensor"] = names.Of("sensor");
            json["controller"] = names.Of("controller");
        }

        json["handle"] = names.Of("handle");
        Add("supervision", wiring.Supervision ? wiring.SupervisionPart : null);
        Add("stepUp", wiring.StepUp ? "module" : null);
        Add("charger", wiring.Charger);
        Add("cutOut", wiring.CutOut);
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
