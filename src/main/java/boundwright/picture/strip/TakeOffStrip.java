package boundwright.picture.strip;

import static boundwright.picture.StripPaths.round;

import boundwright.footfall.Foot;
import boundwright.picture.Sole;
import boundwright.picture.StripPaths;
import boundwright.picture.strip.RunwayStrip.Arc;
import boundwright.picture.strip.RunwayStrip.Band;
import boundwright.picture.strip.RunwayStrip.Print;
import boundwright.picture.strip.RunwayStrip.Row;
import boundwright.picture.strip.RunwayStrip.Tape;
import boundwright.picture.strip.RunwayStrip.Text;
import boundwright.picture.strip.RunwayStrip.Tick;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.SandMarks;
import boundwright.takeoffs.RunJumpMarks;
import boundwright.takeoffs.RunJumpMarks.TakeOffMark;
import java.util.ArrayList;
import java.util.List;

/**
 * The runway strip of take-offs in a row, one row: a tape for each take-off, its foot, the band in which it falls, and the last landing. The
 * running steps between are left out, as nobody tapes them.
 */
public final class TakeOffStrip {
  private static final double PAD = 16;
  private static final double RUNWAY = 54;
  private static final double ARCS = 26;

  private final RunJumpMarks marks;
  private final LengthUnit unit;
  private final Width form;
  private final double to_m;
  private final double scale;
  private final double size;

  private TakeOffStrip(RunJumpMarks marks, LengthUnit unit, Width form) {
    this.marks = marks;
    this.unit = unit;
    this.form = form;
    SandMarks sand = marks.sand();
    to_m = Math.max(Math.min(marks.landing().p95(), 1.15 * marks.landing().p50()), sand == null ? 0 : sand.best_m()) + 0.3;
    scale = (form.units() - 2 * PAD) / to_m;
    size = form == Width.WIDE ? 18 : 12;
  }

  /** The strip in the width asked. */
  public static RunwayStrip of(RunJumpMarks marks, LengthUnit unit, Width form) {
    return new TakeOffStrip(marks, unit, form).draw();
  }

  private double x(double metres) {
    return PAD + metres * scale;
  }

  private RunwayStrip draw() {
    double top = 6 + ARCS;
    double bottom = top + RUNWAY;
    double height = bottom + 26;
    double w = form.units();
    List<Text> texts = new ArrayList<>();
    List<Tape> tapes = new ArrayList<>();
    List<Print> prints = new ArrayList<>();
    List<Band> bands = new ArrayList<>();
    SandMarks sand = marks.sand();
    boolean hollow = sand != null && sand.window() == null;
    for (TakeOffMark t : marks.takeOffs()) {
      boolean right = t.foot() == Foot.RIGHT;
      double at = x(t.fromMark_m().p50());
      double y = top + RUNWAY * (right ? 0.72 : 0.28);
      tapes.add(new Tape(round(at), top - 2, RUNWAY + 4, hollow, top - 2, round(at)));
      prints.add(new Print(t.jump(), round(at), round(y), size, right, Sole.path(at, y, size, right)));
      texts.add(new Text(round(at + 5), round(top + RUNWAY / 2 + 4), 12, "start", Text.Tone.COUNT, String.valueOf(t.jump())));
      if (t.jump() > 1) {
        band(bands, t.fromMark_m(), y, RUNWAY * 0.36);
      }
    }
    double last = x(marks.takeOffs().get(marks.takeOffs().size() - 1).fromMark_m().p50());
    double landing = x(marks.landing().p50());
    landing(prints, landing, top);
    if (sand == null) {
      band(bands, marks.landing(), top + RUNWAY / 2, RUNWAY * 0.8);
    }
    List<Arc> arcs = List.of(new Arc(last, landing, Arc.Kind.JUMP, StripPaths.arc(last, landing, top - 1, Math.min(ARCS, 0.8 * (landing - last)) - 1)));
    Double sandX = sand == null ? null : (Double) round(x(sand.best_m()));
    Row row =
        new Row(
            0, w, 0, height, top, bottom, sandX, sandX == null ? List.of() : StripPaths.grains(sandX, w, top, bottom), null, ticks(bottom, texts), bands,
            List.of(), tapes, null, arcs, prints, texts);
    return new RunwayStrip(w, height, form, sand == null, 0.34, marks.pattern().title(), said(), List.of(row));
  }

  private void band(List<Band> bands, Estimate at, double y, double bulge) {
    double from = Math.max(0, x(at.p05()));
    double to = Math.min(form.units(), x(at.p95()));
    if (to - from >= 1) {
      bands.add(new Band(from, to, StripPaths.lens(from, to, y, bulge)));
    }
  }

  /** Both feet into the sand; on the flat the free leg. */
  private void landing(List<Print> prints, double at, double top) {
    int n = marks.pattern().jumps() + 1;
    for (boolean right : new boolean[] {false, true}) {
      boolean free = (marks.pattern().landing(n - 1) == Foot.RIGHT) == right;
      if (marks.inSand() || free) {
        double y = top + RUNWAY * (0.5 + (right ? 1 : -1) * (marks.inSand() ? 0.17 : 0.22));
        prints.add(new Print(n, round(at), round(y), size, right, Sole.path(at, y, size, right)));
      }
    }
  }

  /** From the sand backwards, on the flat from the first take-off forwards. */
  private List<Tick> ticks(double bottom, List<Text> texts) {
    SandMarks sand = marks.sand();
    return StripScale.of(unit, scale).ticks(m -> sand == null ? x(m) : x(sand.best_m() - m), form.units(), bottom, 12, texts);
  }

  private String said() {
    StringBuilder out = new StringBuilder("The runway from above, travel to the right. ");
    for (TakeOffMark t : marks.takeOffs()) {
      Double tape = t.toSand_m();
      out.append("Take-off ").append(t.jump()).append(' ').append(t.foot().label());
      out.append(tape == null ? " " + unit.write(t.fromMark_m().p50()) + " from the first mark. " : " " + unit.write(tape) + (tape < 0 ? "" : " from the sand") + ". ");
    }
    return out.append("Landing ").append(unit.write(marks.landing().p50())).append(" from the first mark.").toString();
  }
}
