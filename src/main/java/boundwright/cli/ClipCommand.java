package boundwright.cli;

import boundwright.clip.FoundClip;
import boundwright.clip.body.DeLeva;
import boundwright.clip.desk.TaughtFiles;
import boundwright.clip.pose.Weights;
import boundwright.clip.reading.ClipReader;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.PointVerdict;
import boundwright.clip.reading.ReadContact;
import boundwright.clip.reading.ReadFlight;
import boundwright.clip.reading.SequenceMatch;
import boundwright.clip.reading.Setup;
import boundwright.clip.scan.ScanOrder;
import boundwright.clip.scan.ScanProcess;
import boundwright.footfall.Sequence;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.technique.FootContact;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a side-on film of one rep: which foot landed where and when, and how. */
@Command(
    name = "clip",
    description = {
      "Reads a side-on film of one rep: which foot landed where and when, how long each flight and contact was, and how",
      "the foot struck. Nothing leaves this machine; the first use fetches the body-point networks with npm.",
      "Example: boundwright clip rep.mp4 --marks \"120,610=0;1150,606=5\" --sequence \"RRL RRL\"%n"
    })
final class ClipCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "The film, as it came from the phone.")
  private String file = "";

  @Option(names = "--marks", paramLabel = "MARKS", description = "Two or more marks under the athlete's line: \"x1,y1=METRES;x2,y2=METRES\". After a turn of the camera each with its frame: \"x1,y1=METRES@FRAME\". Without them there are no lengths.")
  private @Nullable String marks;

  @Option(names = "--pole", paramLabel = "POLE", description = "Something upright of known height on the line: \"FOOT;TOP=METRES\", as in \"640,600;642,455=2\".")
  private @Nullable String pole;

  @Option(names = "--corners", paramLabel = "POINTS", description = "Four or more points of the athlete's upright plane instead: \"x,y=ALONG,UP;...\".")
  private @Nullable String corners;

  @Option(names = "--box", paramLabel = "BOX", description = "Round the athlete, as x,y,WIDTH,HEIGHT in pixels. Default: the athlete is searched.")
  private @Nullable String box;

  @Option(names = "--box-frame", paramLabel = "N", description = "Frame in which the box is drawn, from 1. Default: 1.")
  private int boxFrame = 1;

  @Option(names = "--sequence", paramLabel = "FEET", description = "The sequence of the card. Default: it is recognised.")
  private @Nullable String sequence;

  @Option(names = "--slowed", paramLabel = "TIMES", description = "How many times slower the film plays than it was filmed: 8 for 240 frames a second shown at 30. Default: 1.")
  private double slowed = 1;

  @Option(names = "--tripod", description = "The camera stood still: gives lengths where the background is too plain to tell.")
  private boolean tripod;

  @Option(names = "--segments", paramLabel = "TABLE", description = "Segment masses: male or female. Default: male.")
  private String segments = "male";

  @Option(names = "--taught", paramLabel = "FOOT", description = "How the foot is taught to land: heel or whole. Default: heel.")
  private String taught = "heel";

  @Option(names = "--every-frame", description = "Look at every frame, also where both feet are high.")
  private boolean everyFrame;

  @Option(names = "--unit", paramLabel = "UNIT", description = "m, or ft for feet and inches. Default: m.")
  private @Nullable String unit;

  private ClipCommand(BoundwrightCommand top) {
    this.top = top;
  }

  /** The command with its own command. */
  static CommandLine with(BoundwrightCommand top) {
    return new CommandLine(new ClipCommand(top)).addSubcommand(new ClipSessionCommand(top)).addSubcommand(new ClipLabelsCommand(top)).addSubcommand(new ClipLearnCommand(top)).addSubcommand(new ClipWeightsCommand(top));
  }

  @Override
  public Integer call() throws InterruptedException {
    Surroundings s = top.surroundings();
    if (file.isEmpty()) {
      throw new RefusedException("No film was named. Give the film of one rep, or: boundwright clip session FILE for the film of a whole session.");
    }
    LengthUnit in = DataOptions.unit(unit, CoachSettings.DEFAULT);
    Setup setup = new Setup(ClipMarks.ground(marks), ClipMarks.pole(pole), ClipMarks.corners(corners), slowed, model());
    FootContact foot = foot();
    Sequence asked = sequence == null ? null : Sequence.parse(sequence);
    ScanOrder order =
        new ScanOrder(
            s.path(file), Weights.folder(data.folder(s).resolve("clips")), Weights.Size.FULL, ClipMarks.box(box), boxFrame - 1, 1,
            !everyFrame, null);
    FoundClip seen = ScanProcess.scan(order, perMille -> {});
    FoundClip clip = tripod ? seen.onTripod() : seen;
    ClipReading reading = ClipReader.read(clip, setup, List.of(), asked, foot, new TaughtFiles(data.folder(s).resolve("clips")).now());
    if (top.json()) {
      Json.print(s.out(), ClipAnswer.of(clip, reading));
    } else {
      print(s.out(), reading, in);
    }
    return 0;
  }

  private FootContact foot() {
    return switch (taught.strip().toLowerCase(Locale.ROOT)) {
      case "heel" -> FootContact.HEEL_ROLLS;
      case "whole", "whole foot" -> FootContact.WHOLE_FOOT;
      default -> throw new RefusedException("The teaching '" + taught + "' is not known. Use heel or whole.");
    };
  }

  private DeLeva model() {
    return switch (segments.strip().toLowerCase(Locale.ROOT)) {
      case "male", "m" -> DeLeva.MALE;
      case "female", "f" -> DeLeva.FEMALE;
      default -> throw new RefusedException("The segment masses '" + segments + "' are not known. Use male or female.");
    };
  }

  private static void print(PrintWriter out, ClipReading r, LengthUnit unit) {
    SequenceMatch m = r.match();
    if (m != null) {
      out.println("Sequence " + m.sequence().letters() + ", first contact from the mark is number " + (m.first() + 1) + ".");
      out.println();
    }
    for (int i = 0; i < r.contacts().size(); i++) {
      ReadContact c = r.contacts().get(i);
      out.printf(
          Locale.ROOT, "%2d  %s  down %s  off %s  contact %s%s%n", i + 1, c.contact().bothFeet() ? "both" : c.contact().foot().letter() + "   ",
          time(c.contact().touchdown_s()), time(c.contact().toeOff_s()), time(c.contact().duration_s()),
          c.strike() == null ? "" : "  lands on the " + c.strike().label());
      if (i < r.flights().size()) {
        ReadFlight f = r.flights().get(i);
        Estimate length = f.length_m();
        out.printf(
            Locale.ROOT, "      flight %s%s%n", time(f.time_s()),
            length == null || Double.isNaN(length.p50()) ? "" : "  length " + unit.write(length.p50()) + " +- " + unit.write(length.halfWidth()));
      }
    }
    out.println();
    for (PointVerdict v : r.verdicts()) {
      if (v.finding() != PointVerdict.Finding.GOOD) {
        out.println(
            "contact " + v.contact() + ", " + v.wentWrong() + (v.finding() == PointVerdict.Finding.UNSURE ? "?" : "") + ": " + v.sentence());
      }
    }
    r.remarks().forEach(out::println);
    out.println("Centre of mass: " + r.model() + ". Times and lengths with the half width of their 90 % interval.");
  }

  private static String time(@Nullable Estimate e) {
    return e == null ? "   -          " : String.format(Locale.ROOT, "%.3f +- %.3f s", e.p50(), e.halfWidth());
  }
}
