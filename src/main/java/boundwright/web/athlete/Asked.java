package boundwright.web.athlete;

import boundwright.athlete.Surface;
import boundwright.footfall.Routine;
import boundwright.runway.Drill;
import boundwright.web.page.Form;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/**
 * What the main screen is asked to show. Its address carries it, so that reload and back work; the texts are kept as
 * they were written, right or wrong.
 *
 * @param sequence as written
 * @param steps as written
 * @param surface what is bounded on
 * @param sand whether the last flight ends in sand
 */
public record Asked(String sequence, String steps, Surface surface, boolean sand) {
  /** What an address or a form asks; {@code otherwise} fills in what it leaves out. */
  static Asked read(Context ctx, Asked otherwise) {
    String sequence = Form.has(ctx, "sequence") ? Form.text(ctx, "sequence") : otherwise.sequence;
    String steps = Form.has(ctx, "steps") ? Form.text(ctx, "steps") : otherwise.steps;
    if (steps.equals("other")) {
      steps = Form.text(ctx, "other");
    }
    Surface surface =
        Form.oneOf(ctx, "surface", Surface.class, otherwise.surface);
    boolean sand = Form.has(ctx, "sand") ? Form.text(ctx, "sand").equals("yes") : otherwise.sand;
    String pick = Form.text(ctx, "pick");
    int from = pick.indexOf('@');
    if (from > 0) {
      // a drill of the long jump comes with its steps and ends in sand
      return new Asked(pick.substring(0, from), pick.substring(from + 1), surface, true);
    }
    return new Asked(pick.isEmpty() ? sequence : pick, steps, surface, sand);
  }

  /** What a drill of the plan asks of an athlete on {@code rung}. */
  static Asked of(Drill drill, int rung, Surface surface) {
    return new Asked(drill.sequence().text(), String.valueOf(drill.stepsFor(rung)), surface, drill.inSand());
  }

  /** The same with another sequence. */
  public Asked with(String otherSequence) {
    return new Asked(otherSequence, steps, surface, sand);
  }

  /** Whether the steps are one of the rungs of the progression. */
  public boolean isOnRung() {
    return Routine.RUNGS.stream().anyMatch(r -> steps.equals(String.valueOf(r)));
  }

  /** Whether the steps are this rung. */
  public boolean isRung(int rung) {
    return steps.equals(String.valueOf(rung));
  }

  /** As the query of an address, without the question mark. */
  public String query() {
    return "sequence=" + enc(sequence) + "&steps=" + enc(steps) + "&surface=" + surface.name() + "&sand=" + (sand ? "yes" : "no");
  }

  private static String enc(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
