using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Heatwright.Quantities;

namespace Heatwright.Web.Near;

/// <summary>Six digits that let one device in. They are shown at the desk only, run out, and are gone after one use or a few wrong tries.</summary>
public sealed class PairingDigits(TimeProvider clock)
{
    /// <summary>After these many wrong tries nobody pairs for a while: five of a million are no chance worth having.</summary>
    public const int MostWrong = 5;

    /// <summary>So long the digits are good.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromMinutes(5);

    /// <summary>So long nobody pairs after too many wrong tries.</summary>
    public static readonly TimeSpan Locked = TimeSpan.FromMinutes(10);

    private readonly Lock gate = new();
    private string? digits;
    private DateTimeOffset until;
    private DateTimeOffset lockedUntil;
    private int wrong;

    /// <summary>The digits to show, and how long they are good; null: none.</summary>
    public (string Digits, TimeSpan Left)? Shown
    {
        get
        {
            lock (gate)
            {
                return Good is { } good ? (good, until - clock.GetUtcNow()) : null;
            }
        }
    }

    /// <summary>How long nobody can pair; nought: not locked.</summary>
    public TimeSpan LockLeft
    {
        get
        {
            lock (gate)
            {
                var left = lockedUntil - clock.GetUtcNow();
                return left > TimeSpan.Zero ? left : TimeSpan.Zero;
            }
        }
    }

    /// <summary>New digits in place of any that were shown; none while it is locked.</summary>
    public void Show()
    {
        lock (gate)
        {
            if (clock.GetUtcNow() >= lockedUntil)
            {
                digits = RandomNumberGenerator.GetInt32(1_000_000).ToString("D6", CultureInfo.InvariantCulture);
                until = clock.GetUtcNow() + Lasts;
                wrong = 0;
            }
        }
    }

    /// <summary>Takes the digits off the screen.</summary>
    public void Hide()
    {
        lock (gate)
        {
            digits = null;
        }
    }

    /// <summary>Null: they are right, and used up. Else why not.</summary>
    /// <param name="typed">As typed on the device.</param>
    public Problem? Try(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        string tried = string.Concat(typed.Where(char.IsAsciiDigit));
        lock (gate)
        {
            if (clock.GetUtcNow() < lockedUntil)
            {
                return Lock();
            }

            if (tried.Length != 6)
            {
                return new("These are not six digits.", "digits", $"{tried.Length.ToString(CultureInfo.InvariantCulture)} digits", "six digits", "Type the six digits that the desk's screen shows.");
            }

            if (Good is not { } good)
            {
                return new("No digits are good just now.", "digits", "none shown, used already, or run out", "digits that the desk shows now", "Ask for new ones at the desk: the page 'Near', button 'Show six digits'.");
            }

            if (CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(good), Encoding.ASCII.GetBytes(tried)))
            {
                digits = null;
                return null;
            }

            wrong++;
            if (wrong >= MostWrong)
            {
                digits = null;
                lockedUntil = clock.GetUtcNow() + Locked;
                return Lock();
            }

            return new("These are not the digits on the desk's screen.", "digits", "six others", $"{(MostWrong - wrong).ToString(CultureInfo.InvariantCulture)} more {(MostWrong - wrong == 1 ? "try" : "tries")}", "Look at the desk's screen and type them again.");
        }
    }

    private string? Good => digits is not null && clock.GetUtcNow() < until ? digits : null;

    private Problem Lock() => new("Pairing is locked after too many wrong tries.", "digits", $"{MostWrong.ToString(CultureInfo.InvariantCulture)} wrong tries",
        $"free again in {Math.Ceiling((lockedUntil - clock.GetUtcNow()).TotalMinutes).ToString(CultureInfo.InvariantCulture)} min", "Wait, then ask for new digits at the desk. If nobody here typed them, somebody else on this network did.");
}
