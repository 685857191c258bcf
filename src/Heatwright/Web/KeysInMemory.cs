using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;

namespace Heatwright.Web;

/// <summary>Keys of the forms' tokens: they live as long as the process, and nothing of them is written to disk.</summary>
/// <remarks>An ephemeral provider alone is not enough: the framework makes its own keys at the start as well, and would put them into the home folder.</remarks>
internal sealed class KeysInMemory : IXmlRepository
{
    private readonly List<XElement> kept = [];

    /// <inheritdoc/>
    public IReadOnlyCollection<XElement> GetAllElements()
    {
        lock (kept)
        {
            return [.. kept.Select(element => new XElement(element))];
        }
    }

    /// <inheritdoc/>
    public void StoreElement(XElement element, string friendlyName)
    {
        lock (kept)
        {
            kept.Add(new XElement(element));
        }
    }
}
