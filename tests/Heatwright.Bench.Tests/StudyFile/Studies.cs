using System.Globalization;
using CsCheck;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Tests.StudyFile;

/// <summary>Studies to try the file with. Every number in them is invented.</summary>
internal static class Studies
{
    private static readonly string[] Texts =
    [
        "", " ", "band", "3,82", "OL", "a \"quoted\" word", "two\nlines", "two\r\nlines", "\r", ",", "\"", " ends blank ", "Ω °C µ", "🔥 hot", "</script><b>", "\u2028", "nul \0 inside", "it's + 1",
    ];

    private static readonly string[] Ids = ["a", "Band", "cell 1", "run-2", "Ω-probe", "x_y", "über", "7", "p(3)", "🔥"];

    /// <summary>A small study of a lens-dew band in which each kind of thing stands once.</summary>
    public static Study Band { get; } = new("lens-dew band", 4711)
    {
        Note = "Invented, for tests.",
        Invented = true,
        Brief = new("Keeps a lens clear of dew.", "band", "night", 5,
            [new("ready", "Warm in five minutes.", RequirementQuantity.WarmUpTime, 300, "s", AtMost: true, Must: true) { Condition = "full cells", Weight = 2 }])
        {
            Duty = new(20, 600, 60, 10, 15, 0.2, 0.05, 40, 8, "a guess"),
        },
        Instruments = [new("meter", "small meter", [new("V", 0.5, 0.02, 0.01), new("Ω", 0.8, 0.3, 0.1)])],
        Parts =
        [
            new(new("cell"), PartKind.Cell, "round cell", [new("capacity", 2.5, "Ah", 0, "claimed", "label"), new("cut-off volts", 2.8, "V", 0, "sheet", "sheet, page 2")])
                { Count = 4, From = "salvaged", Words = new Dictionary<string, string> { ["chemistry"] = "Li-ion" }, Note = "from a torch" },
            new(new("band"), PartKind.Heater, "band", [new("ohms", 6.8, "Ω", 0.1, "measured", "meter")]),
            new(new("switch"), PartKind.Switch, "switch", []), new(new("leads"), PartKind.Leads, "leads", []), new(new("clips"), PartKind.Contacts, "clips", []),
            new(new("probe"), PartKind.Sensor, "probe", []), new(new("board"), PartKind.Controller, "board", []), new(new("tube"), PartKind.Handle, "tube", []),
            new(new("module"), PartKind.StepUp, "module", [new("set volts", 12, "V", 0.1, "assumed", "marked so on the pot")]),
        ],
        Trials =
        [
            new(new("cold"), TrialKind.ColdOhms, new("band"), [new(new("cold-1"), [new("ohms", "Ω", "meter")], [new(1, ["6,8"]), new(2, ["OL"], "probe slipped"), new(3, [""])])
                { Settings = new Dictionary<string, double> { ["leads"] = 0.3, ["at"] = 21.5 } }]) { Purpose = "ohms when cold" },
            new(new("points"), TrialKind.ModulePoints, new("module"), []),
        ],
        Arrangements =
        [
            new(new("two"), "A", "two in series", new("cell"), 2, 1, new("switch"), new("leads"), new("clips"), 4, new("tube"))
                { Heater = new("band"), Sensor = new("probe"), Controller = new("board"), StepUp = new("module"), DutyCeiling = 0.9 },
        ],
    };

    /// <summary>Random studies that hang together, with texts that files do not like.</summary>
    public static Gen<Study> Any { get; } = Gen.Int.Select(seed => new Maker(new Random(seed)).Study());

    private sealed class Maker(Random random)
    {
        public Study Study()
        {
            string[] meters = Some(3);
            PartId[] shelf = [.. Enum.GetValues<PartKind>().Select((_, i) => new PartId($"{Pick(Ids)}.{Number(i)}"))];
            int run = 0;
            return new(Text() + "n", (ulong)random.NextInt64() << random.Next(2))
            {
                Note = Text(),
                Invented = Coin(),
                Brief = Coin() ? Brief() : null,
                Instruments = [.. meters.Select(id => new Instrument(id, Text(), [new("mV", Positive(), Positive(), Positive())]))],
                Parts = [.. Enum.GetValues<PartKind>().Select((kind, i) => Part(shelf[i], kind))],
                Trials = [.. Some(4).Select(id => Trial(id, shelf, meters, () => $"{Pick(Ids)}.{Number(run++)}"))],
                Arrangements = [.. Some(3).Select(id => Arrangement(id, shelf))],
                Files = [.. Some(3).Select(id => KeptFile.Of(id + ".jpg", Text(), Coin() ? KeptAbout.Study : KeptAbout.Part, "", Text(), Bytes())).Select(file => file.About == KeptAbout.Part ? file with { Subject = Pick(shelf).Name } : file)],
                LogWays = [.. meters.Where(_ => Coin()).Select(id => new LogWay(id, Text())
                {
                    CommaSeparates = Coin() ? Coin() : null,
                    DecimalMark = Pick([null, "comma", "point"]),
                    DateOrder = Coin() ? Pick([Heatwright.Logs.DateOrder.DayMonthYear, Heatwright.Logs.DateOrder.MonthDayYear, Heatwright.Logs.DateOrder.YearMonthDay]) : null,
                    MinutesAndSeconds = Coin() ? Coin() : null,
                    TimeUnit = Pick([null, "ms", "min"]),
                    Labels = [.. Some(2).Select(name => new Heatwright.Logs.ColumnLabel(name, Text(), Pick(["", "mV"])))],
                    RealValues = [.. Some(2).Select(_ => Any())],
                })],
            };
        }

        private byte[] Bytes()
        {
            byte[] bytes = new byte[random.Next(300)];
            random.NextBytes(bytes);
            return bytes;
        }

        private Brief Brief() => new(Text(), Text(), Text(), random.Next(-20, 40),
            [.. Some(3).Select(id => new Requirement(id, Text(), RequirementQuantity.ChargeTime, Any(), Pick(["s", "min", "h"]), Coin(), Coin()) { Condition = Text(), Weight = Positive() })])
        {
            Duty = Coin() ? null : new(Any(), Positive() + 1, Positive() + 1, Positive(), Any(), Positive(), Positive(), Positive(), Positive(), Text()),
        };

        private Part Part(PartId id, PartKind kind) => new(id, kind, Text(), [.. Some(2).Select(_ => new StatedValue("mass", Any(), "g", Positive(), Pick(["measured", "sheet", "claimed"]), Text()))])
        {
            Count = random.Next(5),
            From = Pick(["bought", "salvaged", "borrowed", "destroyed"]),
            Words = Some(3).ToDictionary(word => word, _ => Text()),
            Note = Text(),
        };

        private Trial Trial(string id, PartId[] shelf, string[] meters, Func<string> runId)
        {
            var (kind, columns) = random.Next(3) switch
            {
                0 => (TrialKind.ColdOhms, new[] { ("ohms", "mΩ") }),
                1 => (TrialKind.TwoPointDrop, [("drop", "mV"), ("amps", "A")]),
                _ => (TrialKind.Pulse, [("time", "min"), ("amps", "mA"), ("cell degrees", "°C"), ("volts", "V")]),
            };
            Column[] heading = [.. columns.Select(column => new Column(column.Item1, column.Item2, meters.Length > 0 && Coin() ? meters[0] : ""))];
            var runs = Some(2).Select(_ => new Run(new(runId()), heading, Readings(heading.Length)) { Settings = Settings(kind) }).ToArray();
            return new(new(id), kind, Pick(shelf), runs) { Purpose = Text() };
        }

        private Dictionary<string, double> Settings(TrialKind kind) => kind == TrialKind.ColdOhms && Coin() ? new() { ["leads"] = Any(), ["at"] = Any() } : [];

        // Around the size of one block of readings, and none at all.
        private Reading[] Readings(int columns) => [.. Enumerable.Range(1, random.Next(4) * 34).Select(number =>
            new Reading(number, [.. Enumerable.Range(0, columns).Select(_ => Text())], random.Next(9) == 0 ? Text() + "!" : null))];

        private Arrangement Arrangement(string id, PartId[] shelf)
        {
            PartId Of(PartKind kind) => shelf[(int)kind];
            bool lit = Coin();
            return new(new(id), Text(), Text(), Of(PartKind.Cell), random.Next(1, 5), random.Next(1, 3), Of(PartKind.Switch), Of(PartKind.Leads), Of(PartKind.Contacts), random.Next(9),
                Of(PartKind.Handle))
            {
                Heater = lit ? null : Of(PartKind.Heater),
                Lamp = lit ? Of(PartKind.Lamp) : null,
                Sensor = lit && Coin() ? null : Of(PartKind.Sensor),
                Controller = lit && Coin() ? null : Of(PartKind.Controller),
                Supervision = Coin() ? Of(PartKind.Supervision) : null,
                StepUp = Coin() ? Of(PartKind.StepUp) : null,
                Charger = Coin() ? Of(PartKind.Charger) : null,
                CutOut = Coin() ? Of(PartKind.CutOut) : null,
                DutyCeiling = 1 - (random.NextDouble() / 2),
            };
        }

        private string[] Some(int most) => [.. Ids.OrderBy(_ => random.Next()).Take(random.Next(most + 1))];

        private T Pick<T>(T[] from) => from[random.Next(from.Length)];

        private string Text() => Pick(Texts);

        private bool Coin() => random.Next(2) == 0;

        // Any finite double there is, from its bits.
        private double Any() => BitConverter.Int64BitsToDouble(random.NextInt64(long.MinValue, long.MaxValue)) is var number && double.IsFinite(number) ? number : 0.1;

        private double Positive() => Math.Abs(Any()) is var size && size < 1e300 ? size : 1.5;

        private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
    }
}
