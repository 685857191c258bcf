using System.Text.Encodings.Web;
using System.Text.Unicode;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Logging.Abstractions;

namespace Heatwright.Report;

/// <summary>Pieces of the pages, drawn once more for the report: the same mark and the same strip in both.</summary>
internal sealed class Pieces : IDisposable
{
    private readonly ServiceProvider services;
    private readonly HtmlRenderer renderer;

    public Pieces()
    {
        services = new ServiceCollection().AddSingleton(HtmlEncoder.Create(UnicodeRanges.All)).BuildServiceProvider();
        renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
    }

    public Html Of<T>(string? name = null, object? value = null)
        where T : IComponent
    {
        var parameters = name is null ? ParameterView.Empty : ParameterView.FromDictionary(new Dictionary<string, object?> { [name] = value });
        return new(renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<T>(parameters).ConfigureAwait(false)).ToHtmlString()).GetAwaiter().GetResult());
    }

    public void Dispose()
    {
        renderer.Dispose();
        services.Dispose();
    }
}
