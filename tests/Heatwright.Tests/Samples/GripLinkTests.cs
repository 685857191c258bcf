using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Tests.Samples;

/// <summary>What leaves the working end is counted once: a warm-up that told no grip apart has read all of it.</summary>
public class GripLinkTests
{
    [Fact]
    public void What_is_assumed_to_go_into_the_grip_is_a_part_of_the_loss_that_was_read()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "lens-band")).Value;
        var found = RunStudy.Findings(study, TestContext.Current.CancellationToken).Select(part => part with { Findings = [.. part.Findings.Where(finding => finding.Quantity != PartQuantities.GripLink)] });
        var shelf = new Heatwright.Arrangements.Shelf(study.Parts, [.. found]);
        var arrangement = study.Arrangements[0];
        var builder = PlantBuilder.For(arrangement, shelf, RunStudy.Plan(study.Brief!)).Value;
        var (loss, link) = (builder.Inputs[builder.Place(PlantKey.EndLoss)].Value, builder.Inputs[builder.Place(PlantKey.GripLink)].Value);
        Assert.IsType<Origin.Fitted>(loss.Origin);
        Assert.IsType<Origin.Assumed>(link.Origin);
        var network = builder.Build(builder.Middle).Network;
        Assert.Equal(loss.Si, network.Nodes[0].LinearWPerK + network.Links[0].WPerK, 12);
        Assert.Equal(link.Si, network.Links[0].WPerK, 12);

        // A loss that is less than what is assumed of the grip takes that down with it.
        double[] little = builder.Middle;
        little[builder.Place(PlantKey.EndLoss)] = link.Si / 2;
        var tight = builder.Build(little).Network;
        Assert.Equal((0.0, link.Si / 2), (tight.Nodes[0].LinearWPerK, tight.Links[0].WPerK));
    }

    [Fact]
    public void Where_the_grip_was_read_beside_it_both_count()
    {
        var study = Bundle.Read(Path.Combine(Repository.Root, "samples", "rope-hot-knife")).Value;
        var shelf = new Heatwright.Arrangements.Shelf(study.Parts, RunStudy.Findings(study, TestContext.Current.CancellationToken));
        var builder = PlantBuilder.For(study.Arrangements[0], shelf, RunStudy.Plan(study.Brief!)).Value;
        Assert.IsType<Origin.Fitted>(builder.Inputs[builder.Place(PlantKey.GripLink)].Value.Origin);
        Assert.Equal(builder.Inputs[builder.Place(PlantKey.EndLoss)].Value.Si, builder.Build(builder.Middle).Network.Nodes[0].LinearWPerK, 12);
    }

    [Fact]
    public void A_heat_without_a_contact_is_taken_in_half_of_its_time()
    {
        var brief = Bundle.Read(Path.Combine(Repository.Root, "samples", "wax-pen")).Value.Brief!;
        var duty = brief.Work with { Contact = 0, ContactPlusMinus = 0, NeedJ = 8, ForS = 4, TargetC = 110, AboveC = 30 };
        var contact = RunStudy.Plan(brief with { Duty = duty }).Contact;

        // 8 J in 2 s over 80 K.
        Assert.Equal(0.05, contact.Si, 12);
        Assert.IsType<Origin.Assumed>(contact.Origin);
        Assert.Contains("state it with 'contact'", ((Origin.Assumed)contact.Origin).Why);
        Assert.Equal(brief.Work.Contact, RunStudy.Plan(brief).Contact.Si);
    }
}
