using Spectre.Console;
using Spectre.Console.Rendering;

namespace Heatwright.Cli;

/// <summary>The text of a table's cell; where the screen knows ASCII only, it is written plainly before its width is taken.</summary>
internal sealed class Cell(string text) : IRenderable
{
    /// <summary>What stands in it.</summary>
    public string Words => text;

    public Measurement Measure(RenderOptions options, int maxWidth) => ((IRenderable)Inner(options)).Measure(options, maxWidth);

    public IEnumerable<Segment> Render(RenderOptions options, int maxWidth) => ((IRenderable)Inner(options)).Render(options, maxWidth);

    private Text Inner(RenderOptions options) => new Text(options.Unicode ? text : PlainWords.Of(text));
}
