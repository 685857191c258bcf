using System.Globalization;
using Heatwright.DemoTruth;

var hidden = args is ["--scene", string scene, ..] ? new Hidden(scene) : new Hidden();
string folder = hidden.Folder;
bool truth = false;
string letters = "ABCD";
int rename = 0;
for (int i = 0; i < args.Length; i++)
{
    string Next() => ++i < args.Length ? args[i] : throw new ArgumentException($"'{args[i - 1]}' needs a value after it.");
    switch (args[i])
    {
        case "--scene":
            i++;
            break;
        case "--truth":
            truth = true;
            break;
        case "--only":
            letters = Next();
            break;
        case "--out":
            folder = Next();
            break;
        case "--rename":
            rename = i + 1 < args.Length && int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number + (0 * ++i) : 1;
            break;
        case "--set":
            string[] pair = Next().Split('=');
            hidden[pair[0]] = double.Parse(pair[^1], CultureInfo.InvariantCulture);
            break;
        default:
            Console.Error.WriteLine("Usage: [--scene NAME] [--out DIR] [--truth [--only LETTERS]] [--set name=value]... [--rename [number]]");
            return 2;
    }
}

if (truth)
{
    Truth.Print(hidden, letters, Console.Out);
    return 0;
}

DemoStudy.Write(folder, hidden, rename);
return 0;
