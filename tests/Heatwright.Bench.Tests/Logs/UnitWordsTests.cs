using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>SI values of one unit, by hand from the definitions in the SI brochure (BIPM, 9th edition, 2019).</summary>
public class UnitWordsTests
{
    [Theory]
    [InlineData("V", "V", 1), InlineData("mV", "mV", 1e-3), InlineData("m V", "mV", 1e-3), InlineData("uV", "µV", 1e-6), InlineData("µV", "µV", 1e-6), InlineData("\u03BCV", "µV", 1e-6), InlineData("VDC", "V", 1), InlineData("mV AC", "mV", 1e-3)]
    [InlineData("DCV", "V", 1), InlineData("~V", "V", 1), InlineData("A", "A", 1), InlineData("mA", "mA", 1e-3), InlineData("Amps", "A", 1), InlineData("Ohm", "Ω", 1), InlineData("OHMS", "Ω", 1), InlineData("\u2126", "Ω", 1), InlineData("kOhm", "kΩ", 1e3)]
    [InlineData("KOHM", "kΩ", 1e3), InlineData("mOhm", "mΩ", 1e-3), InlineData("MOhm", "MΩ", 1e6), InlineData("MOHM", "MΩ", 1e6), InlineData("W", "W", 1), InlineData("kW", "kW", 1e3), InlineData("J", "J", 1), InlineData("Wh", "Wh", 3600), InlineData("mAh", "mAh", 3.6)]
    [InlineData("s", "s", 1), InlineData("sec", "s", 1), InlineData("Sekunden", "s", 1), InlineData("ms", "ms", 1e-3), InlineData("min", "min", 60), InlineData("h", "h", 3600), InlineData("hours", "h", 3600), InlineData("%", "%", 0.01), InlineData("% RH", "%", 0.01)]
    [InlineData("K", "K", 1), InlineData("hPa", "hPa", 100), InlineData("kPa", "kPa", 1000), InlineData("mbar", "mbar", 100), InlineData("Hz", "Hz", 1), InlineData("kHz", "kHz", 1000), InlineData("g", "g", 1e-3), InlineData("mm", "mm", 1e-3), InlineData("uF", "µF", 1e-6)]
    [InlineData("W/m^2", "W/m^2", 1), InlineData("Wh/m2", "Wh/m2", 3600), InlineData("Wh m-2", "Wh m-2", 3600), InlineData("kg/m2", "kg/m2", 1), InlineData("K/W", "K/W", 1), InlineData("J/K", "J/K", 1), InlineData("m/s", "m/s", 1), InlineData("1/K", "1/K", 1)]
    public void Units_as_logs_write_them(string text, string symbol, double factor)
    {
        var unit = UnitWords.Find(text);
        Assert.NotNull(unit);
        Assert.Equal(symbol, unit.Symbol);
        Assert.Equal(factor, unit.Factor, factor * 1e-12);
    }

    [Theory, InlineData("degC"), InlineData("°C"), InlineData("ºC"), InlineData("C"), InlineData("deg C"), InlineData("Deg. C"), InlineData("celsius"), InlineData("DEGC")]
    public void Nought_degrees_Celsius_is_273_15_kelvin(string text) => Assert.Equal(273.15, UnitWords.Find(text)!.ToSi(0), 1e-9);

    [Theory, InlineData("degF"), InlineData("°F"), InlineData("F")]
    public void Thirty_two_degrees_Fahrenheit_is_the_ice_point(string text) => Assert.Equal(273.15, UnitWords.Find(text)!.ToSi(32), 1e-9);

    [Theory, InlineData("GT"), InlineData("CO"), InlineData("NOx"), InlineData("O3"), InlineData("x"), InlineData(""), InlineData("12"), InlineData("0-1"), InlineData("HEAT"), InlineData("Dobson unit"), InlineData("m/"), InlineData("/"), InlineData("ADC")]
    public void Other_words_are_no_units(string text) => Assert.Null(UnitWords.Find(text));
}
