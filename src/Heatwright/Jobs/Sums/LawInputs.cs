using Heatwright.Handbook;

namespace Heatwright.Jobs.Sums;

/// <summary>An input of a law as it is shown to whoever types it.</summary>
public static class LawInputs
{
    extension(LawInput input)
    {
        /// <summary>Unit of a bare number, as shown beside the field; empty for words and pure numbers.</summary>
        public string BareUnit => input.IsYesNo || input.Card.Unit == "word" ? "" : Typed.Bare(input)?.Symbol ?? input.Card.Unit;

        /// <summary>What may be typed, and where the law was fitted; empty where the law leaves it open.</summary>
        public string Range => Typed.Range(input);

        /// <summary>What is taken when nothing is typed; empty: nothing, or what the law itself takes.</summary>
        public string DefaultText => input.Card.DefaultWord.Length > 0 ? input.Card.DefaultWord
            : !double.IsFinite(input.Card.Default) ? ""
            : input.IsYesNo ? (input.Card.Default == 1 ? "yes" : "no")
            : SumUnits.Shown(input.Card.Default, 0, input.Card.Unit);
    }
}
