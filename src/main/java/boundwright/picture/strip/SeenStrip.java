package boundwright.picture.strip;

import static boundwright.picture.StripPaths.round;
import static boundwright.picture.StripPaths.textWidth;

import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.SequenceMatch;
import boundwright.footfall.Flight;
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
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The runway strip as a clip shows it: where the feet fell, the length of each flight above its arc. One row. */
public final class SeenStrip {
  private static final double PAD = 18;
  /** Room for the body before the first contact and after the last, where the athlete stands above the strip. */
  private static final double BODY_PAD = 84;
  private static final double RUNWAY = 54;
  private static final double ARCS = 34;

  private final ClipReading reading;
  private final SequenceMatch match;
  private final @Nullable Double sand;
  private final LengthUnit unit;
  private final Width form;
  private final List<Estimate> at = new ArrayList<>();
  private final boolean landed;
  private final double scale;
  private final double textSize;
  private final double pad;

  private SeenStrip(ClipReading reading, SequenceMatch match, @Nullable Double markToSand_m, LengthUnit unit, Width form, double pad) {
    this.pad = pad;
    this.reading = reading;
    this.match = match;
    this.unit = unit;
    this.form = form;
    int n = match.sequence().size();
    double mark = place(match.first()).p50();
    for (int k = 0; k < n; k++) {
      at.add(place(match.first() + k).plus(-mark));
    }
    int after = match.first() + n;
    landed = after < reading.contacts().size() && reading.contacts().get(after).contact().bothFeet();
    if (landed) {
      at.add(reading.contacts().get(after).contact().heel_m().plus(-mark));
    }
    double last = at.get(at.size() - 1).p50();
    // sand far beyond what the clip shows would squeeze the feet together
    sand = markToSand_m != null && markToSand_m < last + 3 ? markToSand_m : null;
    double to = Math.max(last, sand == null ? 0 : sand) + 0.35;
    scale = Math.min(form == Width.WIDE ? 130 : 80, (form.units() - 2 * pad) / Math.max(to, 1));
    textSize = form == Width.WIDE ? 13 : 11;
  }

  /**
   * The strip.
   *
   * @param reading with lengths and at least one contact
   * @param markToSand_m from the take-off mark to the sand [m], or null
   * @return null where the clip has no lengths or no contact
   */
  public static @Nullable RunwayStrip of(ClipReading reading, @Nullable Double markToSand_m, LengthUnit unit, Width form) {
    SequenceMatch match = reading.match();
    return match == null || !reading.scaled() ? null : new SeenStrip(reading, match, markToSand_m, unit, form, PAD).draw();
  }

  /**
   * A strip over which the athlete can stand.
   *
   * @param strip the wide strip with room at both ends
   * @param zero where the first contact is in it
   * @param perMetre its units in a metre
   * @param mark_m place of the first contact in the reading [m]
   */
  public record Under(RunwayStrip strip, double zero, double perMetre, double mark_m) {
    /** Where a place of the reading is in the strip. */
    public double x(double place_m) {
      return zero + (place_m - mark_m) * perMetre;
    }

    /** The place in the reading at the strip's left edge [m]. */
    public double from() {
      return mark_m - zero / perMetre;
    }

    /** The place in the reading at the strip's right edge [m]. */
    public double to() {
      return mark_m + (strip.width() - zero) / perMetre;
    }
  }

  /** The strip over which the athlete stands at each contact; null where the clip has no lengths or no contact. */
  public static @Nullable Under under(ClipReading reading, @Nullable Double markToSand_m, LengthUnit unit) {
    SequenceMatch match = reading.match();
    if (match == null || !reading.scaled()) {
      return null;
    }
    SeenStrip drawn = new SeenStrip(reading, match, markToSand_m, unit, Width.WIDE, BODY_PAD);
    return new Under(drawn.draw(), drawn.x(0), drawn.scale, drawn.place(match.first()).p50());
  }

  private Estimate place(int contact) {
    return reading.contacts().get(contact).contact().place_m();
  }

  private double x(double metres) {
    return pad + metres * scale;
  }

  private boolean right(int k) {
    return match.sequence().contacts().get(k) == Foot.RIGHT;
  }

  private int feet() {
    return match.sequence().size();
  }

  private RunwayStrip draw() {
    double w = form.units();
    List<Text> texts = new ArrayList<>();
    boolean twoLanes = false;
    for (int k = 0; k + 1 < at.size(); k++) {
      twoLanes |= textWidth(length(k), textSize) + 6 > x(at.get(k + 1).p50()) - x(at.get(k).p50());
    }
    double top = 14 + (twoLanes ? 2 : 1) * (textSize + 3) + ARCS;
    double bottom = top + RUNWAY;
    List<Arc> arcs = arcs(top, twoLanes, texts);
    List<Print> prints = prints(top, texts);
    List<Tick> ticks = ticks(bottom, texts);
    List<Tape> tapes = List.of(new Tape(round(x(0)), top - 2, RUNWAY + 4, false, top - 2, round(x(0))));
    Double sandX = sand == null ? null : (Double) round(x(sand));
    Row row =
        new Row(
            0, w, 0, bottom + 26, top, bottom, sandX, sandX == null ? List.of() : StripPaths.grains(sandX, w, top, bottom), null,
            ticks, bands(top), List.of(), tapes, null, arcs, prints, texts);
    String title = match.sequence().text() + " as the clip shows it";
    return new RunwayStrip(w, bottom + 26, form, sand == null, 0.34, title, said(), List.of(row));
  }

  private String length(int k) {
    return unit.write(at.get(k + 1).p50() - at.get(k).p50());
  }

  private List<Arc> arcs(double top, boolean twoLanes, List<Text> texts) {
    List<Arc> out = new ArrayList<>();
    List<Flight> flights = match.sequence().flights();
    for (int k = 0; k + 1 < at.size(); k++) {
      double from = x(at.get(k).p50());
      double to = x(at.get(k + 1).p50());
      Arc.Kind kind =
          switch (flights.get(k).kind()) {
            case HOP -> Arc.Kind.HOP;
            case BOUND -> Arc.Kind.BOUND;
            case JUMP -> Arc.Kind.JUMP;
          };
      double high = Math.min(ARCS, 0.8 * (to - from));
      out.add(new Arc(from, to, kind, StripPaths.arc(from, to, top - 1, (kind == Arc.Kind.BOUND ? 0.45 : 1) * high - 1)));
      double y = top - ARCS - 5 - (twoLanes && k % 2 == 1 ? textSize + 3 : 0);
      double half = textWidth(length(k), textSize) / 2;
      double middle = Math.max(half + 1, Math.min(form.units() - half - 1, (from + to) / 2));
      texts.add(new Text(round(middle), round(y), textSize, "middle", Text.Tone.FIGURE, length(k)));
    }
    return out;
  }

  private double lane(int k, double top) {
    return top + RUNWAY * (right(k) ? 0.70 : 0.30);
  }

  private List<Print> prints(double top, List<Text> texts) {
    double gap = Double.MAX_VALUE;
    for (int k = 0; k + 1 < at.size(); k++) {
      gap = Math.min(gap, x(at.get(k + 1).p50()) - x(at.get(k).p50()));
    }
    double size = Math.max(9, Math.min(0.86 * gap, Math.max(form == Width.WIDE ? 15 : 17, Math.min(0.30 * scale, 30))));
    List<Print> out = new ArrayList<>();
    for (int k = 0; k < feet(); k++) {
      double px = x(at.get(k).p50());
      out.add(new Print(k + 1, round(px), round(lane(k, top)), size, right(k), Sole.path(px, lane(k, top), size, right(k))));
      if (k > 0) {
        texts.add(new Text(round(px), round(top + RUNWAY * (right(k) ? 0.27 : 0.74) + 3.5), 10, "middle", Text.Tone.COUNT, String.valueOf(k + 1)));
      }
    }
    if (landed) {
      double px = x(at.get(feet()).p50());
      for (boolean filled : new boolean[] {false, true}) {
        double y = top + RUNWAY * (0.5 + (filled ? 1 : -1) * Math.max(0.13, 0.29 * size / RUNWAY));
        out.add(new Print(feet() + 1, round(px), round(y), size, filled, Sole.path(px, y, size, filled)));
      }
    }
    return out;
  }

  private List<Band> bands(double top) {
    List<Band> out = new ArrayList<>();
    for (int k = 1; k < feet(); k++) {
      double from = x(at.get(k).p05());
      double to = x(at.get(k).p95());
      if (to - from >= 1) {
        out.add(new Band(from, to, StripPaths.lens(from, to, lane(k, top), RUNWAY * 0.42)));
      }
    }
    return out;
  }

  /** From the sand backwards where it is known, else from the first contact forwards. */
  private List<Tick> ticks(double bottom, List<Text> texts) {
    return StripScale.of(unit, scale).ticks(m -> sand == null ? x(m) : x(sand - m), form.units(), bottom, 11, texts);
  }

  private String said() {
    StringBuilder out = new StringBuilder("The runway from above, travel to the right, from the first contact. ");
    List<Flight> flights = match.sequence().flights();
    for (int k = 0; k < at.size(); k++) {
      boolean foot = k < feet();
      out.append(foot ? "Contact " + (k + 1) + " " + match.sequence().contacts().get(k).label() : "Landing");
      out.append(k == 0 ? ". " : " after a " + flights.get(k - 1).kind().label() + " of " + length(k - 1) + ". ");
    }
    return out.toString().strip();
  }
}
