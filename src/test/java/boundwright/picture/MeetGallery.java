package boundwright.picture;

import boundwright.approach.aim.AimAdvice;
import boundwright.approach.aim.Goal;
import boundwright.approach.aim.JumpForm;
import boundwright.approach.aim.Rival;
import boundwright.approach.board.BoardGaps;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.run.RunThrough;
import boundwright.approach.run.RunUpPlan;
import boundwright.approach.run.RunwaySpread;
import boundwright.approach.run.SpeedBySteps;
import boundwright.approach.run.StepModel;
import boundwright.flight.ContactModel;
import boundwright.flight.FlightChain.Link;
import boundwright.flight.FlightChain.Push;
import boundwright.flight.FlightChain;
import boundwright.footfall.Foot;
import boundwright.jump.BestShares;
import boundwright.jump.ContactLine;
import boundwright.jump.ContactPrior;
import boundwright.jump.JumpProfile;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phase;
import boundwright.jump.ReferenceJump;
import boundwright.jump.Shares;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Writes the pictures of the jump and the meet into one page, to be looked at: {@code java ... MeetGallery OUT.html}. */
final class MeetGallery {
  private MeetGallery() {}

  /** An invented athlete's jumps by a contact line; vertical speeds vary from jump to jump. */
  static List<MeasuredJump> jumps(double a1, double hopVy, int count, long seed) {
    Random random = new Random(seed);
    double[] to = {1.25, 1.2, 1.2};
    double[] td = {1.05, 1.05, 0.65};
    double[] ground = {.75, .75, 1.0};
    double[] usual = {hopVy, 1.8, 2.2};
    List<MeasuredJump> out = new ArrayList<>();
    for (int j = 0; j < count; j++) {
      List<MeasuredContact> contacts = new ArrayList<>();
      List<MeasuredJump.Body> bodies = new ArrayList<>();
      double speed = 9.3 + 0.15 * random.nextGaussian();
      double fall = -0.3;
      for (int i = 0; i < 3; i++) {
        double vy = usual[i] + 0.2 * random.nextGaussian();
        Link link =
            FlightChain.run(new ContactModel.ByGain(-1.2, a1), speed, fall, List.of(new Push(vy, to[i], td[i], ground[i]))).get(0);
        double left = link.vx() + 0.1 * random.nextGaussian();
        contacts.add(new MeasuredContact(Phase.IN_ORDER.get(i), speed, left, fall, vy));
        bodies.add(new MeasuredJump.Body(to[i], td[i], ground[i]));
        speed = left;
        fall = link.touchdownVy();
      }
      out.add(new MeasuredJump(contacts, bodies, 0.05));
    }
    return out;
  }

  static BestShares best(List<MeasuredJump> jumps) {
    JumpProfile profile = JumpProfile.of(jumps);
    ContactLine line = ContactLine.learn(jumps.stream().flatMap(j -> j.contacts().stream()).toList(), ContactPrior.JUDGED);
    return BestShares.of(line, profile, profile.shortestStep_m(), Shares.DEFAULT_THRESHOLD, new Random(7));
  }

  static List<SharesPicture.Shown> shown(List<MeasuredJump> jumps) {
    List<SharesPicture.Shown> out = new ArrayList<>();
    for (int i = 0; i < jumps.size(); i++) {
      out.add(new SharesPicture.Shown(jumps.get(i).phases().shares(), i == jumps.size() - 1));
    }
    return out;
  }

  /** Run-throughs of an invented athlete who steers over the last four steps. */
  static List<RunThrough> runs(int steps, int count, long seed) {
    Random random = new Random(seed);
    List<RunThrough> out = new ArrayList<>();
    for (int r = 0; r < count; r++) {
      double[] length = new double[steps];
      double sum = 0.10;
      for (int i = 0; i < steps; i++) {
        length[i] = 2.12 - 0.97 * Math.pow(0.776, i);
        sum += length[i];
      }
      double start = Math.round(sum * 100) / 100.0;
      double error = 0;
      double at = start;
      List<Double> positions = new ArrayList<>();
      for (int i = 0; i < steps; i++) {
        at -= length[i];
        error += 0.07 * random.nextGaussian();
        if (steps - i <= 4) {
          error *= 0.6;
        }
        positions.add(Math.round((at + error) * 100) / 100.0);
      }
      out.add(new RunThrough(steps, start, positions, null, null));
    }
    return out;
  }

  public static void main(String[] args) throws Exception {
    TemplateEngine engine = TemplateEngine.createPrecompiled(null, ContentType.Html, null, "boundwright.pages");
    StringBuilder out = new StringBuilder("<!doctype html><meta charset=utf-8><style>@font-face{font-family:Bitter;src:url(" + Path.of("src/main/resources/fonts/Bitter_400Regular.ttf").toUri() + ")}@font-face{font-family:Bitter;font-weight:700;src:url(" + Path.of("src/main/resources/fonts/Bitter_700Bold.ttf").toUri() + ")}body{margin:0;background:#faf6ec;font:12px Bitter}div{display:inline-block;vertical-align:top;margin:0 12px 12px 0}</style>");
    for (double[] who : new double[][] {{0.6, 2.3, 8}, {0.4, 2.5, 5}, {0.7, 1.9, 10}}) {
      List<MeasuredJump> jumps = jumps(who[0], who[1], (int) who[2], 5);
      show(engine, out, "shares", SharesPicture.of(shown(jumps), best(jumps), ReferenceJump.ALL, 2));
    }
    show(engine, out, "shares", SharesPicture.of(List.of(new SharesPicture.Shown(Shares.ofLengths(4.8, 3.6, 4.6), true)), null, ReferenceJump.ALL, 2));
    show(engine, out, "shares", SharesPicture.of(List.of(new SharesPicture.Shown(Shares.ofLengths(4.8, 3.6, 4.6), true)), null, List.of(), 2));
    JumpForm form = new JumpForm(14, 0.2, 0.1);
    BoardSpread board = BoardSpread.of(BoardGaps.of(List.of(0.02, 0.15, 0.04, 0.11, 0.01, 0.2, 0.03), 5));
    BoardSpread far = BoardSpread.of(BoardGaps.of(List.of(0.22, 0.35, 0.24, 0.31, 0.21, 0.29, 0.33), 0));
    BoardSpread over = BoardSpread.of(BoardGaps.of(List.of(0.02, -0.05), 6));
    for (Goal goal : new Goal[] {new Goal.Longest(0), new Goal.Longest(13), Goal.Target.metres(14.2), Goal.Place.ahead(new Rival("B", 14.1, 2, 14, 0.2, 0.3))}) {
      for (BoardSpread b : List.of(board, far, over)) {
        JumpForm f = form.withGapSd(b.sd_m().p50());
        show(engine, out, "aim", AimPicture.of(f, goal, 6, AimAdvice.of(b, f, goal, 6), b.equals(far) ? Foot.RIGHT : Foot.LEFT, b.equals(far) ? LengthUnit.FEET_INCHES : LengthUnit.METRES));
      }
    }
    out.append("<br>");
    for (int steps : new int[] {18, 12, 6}) {
      List<RunThrough> runs = runs(steps, steps == 6 ? 3 : 9, 3);
      StepModel model = StepModel.of(runs);
      RunUpPlan plan = RunUpPlan.of(model, SpeedBySteps.of(List.of()), steps, 0.08, RunUpPlan.USUAL_CHECK, RunUpPlan.USUAL_EARLY);
      RunwaySpread spread = steps == 6 ? null : RunwaySpread.of(runs);
      for (RunwayStrip.Width w : RunwayStrip.Width.values()) {
        show(engine, out, "runup", RunUpPicture.of(plan, model, spread, Foot.LEFT, w == RunwayStrip.Width.WIDE && steps == 12 ? LengthUnit.FEET_INCHES : LengthUnit.METRES, w));
      }
      out.append("<br>");
    }
    Files.writeString(Path.of(args[0]), out);
  }

  private static void show(TemplateEngine engine, StringBuilder out, String template, Object picture) {
    StringOutput html = new StringOutput();
    engine.render("card/" + template + ".jte", picture, html);
    out.append("<div>").append(html).append("</div>");
  }
}
