package boundwright.picture.strip;

import static boundwright.picture.StripPaths.round;
import static boundwright.picture.StripPaths.textWidth;

import boundwright.flight.Forecast;
import boundwright.footfall.Flight;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.picture.Sole;
import boundwright.picture.StripPaths;
import boundwright.picture.StripWords;
import boundwright.picture.strip.RunwayStrip.Arc;
import boundwright.picture.strip.RunwayStrip.Band;
import boundwright.picture.strip.RunwayStrip.Bracket;
import boundwright.picture.strip.RunwayStrip.Print;
import boundwright.picture.strip.RunwayStrip.Row;
import boundwright.picture.strip.RunwayStrip.Tape;
import boundwright.picture.strip.RunwayStrip.Text;
import boundwright.picture.strip.RunwayStrip.Tick;
import boundwright.picture.strip.RunwayStrip.Whisker;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Window;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lays out one strip. Metres along the runway ("u", from the take-off mark, forward) become drawing units; the run-up is
 * broken so that the flights get the room; rows are cut half way between two feet.
 */
public final class StripDrawing {
  private static final double PAD = 14;
  private static final double RUNWAY = 62;
  /** Left feet, the numbers, right feet: each in a lane of its own, as shares of the runway from its upper edge. */
  private static final double LEFT_LANE = 0.24;
  private static final double RIGHT_LANE = 0.76;
  private static final double COUNT_LANE = 0.5;
  private static final double COUNT = 12;
  /** How far the sand stands out on either side of the runway. */
  public static final double STAND_OUT = 7;
  private static final double LANE = 5.5;
  private static final int MOST_LANES = 6;
  private static final int MOST_ROWS = 8;

  private final MarkAdvice advice;
  private final Forecast forecast;
  private final Sequence sequence;
  private final LengthUnit unit;
  private final Width form;
  private final boolean flat;
  private final int n;

  /** Drawing units in a metre. */
  private double scale;
  /** x of the take-off mark. */
  private double markX;
  private double from_m;
  private double to_m;
  private double footLength;
  private final double figure;
  private final double caption;
  private final double small;
  private final double arcRoom;

  StripDrawing(MarkAdvice advice, LengthUnit unit, Width form, boolean flat) {
    this.advice = advice;
    this.forecast = advice.forecast();
    this.sequence = forecast.sequence();
    this.unit = unit;
    this.form = form;
    this.flat = flat;
    this.n = sequence.size();
    boolean wide = form == Width.WIDE;
    figure = wide ? 26 : 22;
    caption = wide ? 9 : 12;
    small = 12;
    arcRoom = wide ? 36 : 34;
  }

  RunwayStrip draw() {
    extent();
    List<Double> cuts = fit();
    footLength = footLength();
    List<Whisker> whiskers = whiskers();
    List<Row> rows = new ArrayList<>();
    double y = 0;
    for (int r = 0; r + 1 < cuts.size(); r++) {
      Row row = row(cuts.get(r), cuts.get(r + 1), y, r == 0, whiskers);
      rows.add(row);
      y += row.height() + 6;
    }
    StripWords words = new StripWords(advice, unit, flat);
    return new RunwayStrip(form.units(), y - 6, form, flat, bandOpacity(whiskers), words.title(), words.said(), rows);
  }

  // ---- along the runway ----

  private void extent() {
    double last = 0;
    double first = 0;
    for (int c = 1; c <= n + 1; c++) {
      Estimate at = forecast.position(c);
      first = Math.min(first, at.p05());
      last = Math.max(last, at.p95());
    }
    Window window = shownWindow();
    double mark = advice.markToSand_m();
    from_m = window == null ? first : Math.min(first, mark - window.max_m());
    // a landing of which little is known may lie anywhere: the picture ends two flights beyond its middle, the band runs off it
    double landing = forecast.mean(n + 1);
    last = Math.min(last, landing + 2 * landing / n);
    to_m = flat ? last : Math.max(last, mark + 0.5);
    if (window != null) {
      to_m = Math.max(to_m, mark - window.min_m());
    }
  }

  private @Nullable Window shownWindow() {
    return flat ? null : advice.window();
  }

  private boolean runUpShown() {
    return forecast.approachSteps() > 0;
  }

  /** Chooses scale and rows; answers where the rows are cut, the two ends included. */
  private List<Double> fit() {
    double w = form.units();
    boolean wide = form == Width.WIDE;
    double lead = wide ? 24 : 20;
    if (runUpShown()) {
      lead = Math.max(wide ? 96 : 62, PAD + textWidth(startFigure(), startSize()) + 12);
    }
    double least = wide ? 18 : 21;
    double most = wide ? 150 : 84;
    double spacing_m = forecast.mean(n + 1) / n;
    double length_m = to_m - from_m;
    for (int rows = 1; ; rows++) {
      double room = rows * w - lead - PAD - (rows - 1) * least;
      scale = Math.min(most, room / length_m);
      double spare = rows == 1 ? room - scale * length_m : 0;
      markX = lead + spare - from_m * scale;
      if (scale * spacing_m < least && rows < MOST_ROWS) {
        continue;
      }
      List<Double> cuts = cuts(w);
      while (cuts.size() - 1 > rows) {
        scale *= 0.985;
        markX = lead + spare - from_m * scale;
        cuts = cuts(w);
      }
      return cuts;
    }
  }

  /** Breaks the run of feet into rows no wider than {@code w}, each cut half way between two feet. */
  private List<Double> cuts(double w) {
    List<Double> cuts = new ArrayList<>(List.of(0.0));
    double end = round(x(to_m) + PAD);
    double start = 0;
    while (end - start > w + 0.01) {
      double cut = start + w;
      for (int c = n; c >= 1; c--) {
        double middle = (x(forecast.mean(c)) + x(forecast.mean(c + 1))) / 2;
        if (middle <= start + w) {
          if (middle > start + w / 2) {
            cut = round(middle);
          }
          break;
        }
      }
      cuts.add(cut);
      start = cut;
    }
    cuts.add(cuts.size() == 1 ? w : end);
    return cuts;
  }

  private double x(double u_m) {
    return markX + u_m * scale;
  }

  private double footLength() {
    double gap = Double.MAX_VALUE;
    for (int c = 1; c < n; c++) {
      gap = Math.min(gap, scale * (forecast.mean(c + 1) - forecast.mean(c)));
    }
    boolean wide = form == Width.WIDE;
    double wish = Math.min(Math.max(0.30 * scale, wide ? 15 : 17), wide ? 32 : 27);
    return Math.max(9, Math.min(wish, 0.86 * gap));
  }

  private boolean right(int contact) {
    return contact > n || sequence.contacts().get(contact - 1) == Foot.RIGHT;
  }

  // ---- below the runway ----

  /** One whisker for each contact, or for every 2nd, 5th or 10th where they would not fit into the lanes. */
  private List<Whisker> whiskers() {
    List<Whisker> out = List.of();
    for (int each : new int[] {1, 2, 5, 10, 20}) {
      out = whiskers(each);
      if (out.stream().mapToInt(Whisker::lane).max().orElse(0) < MOST_LANES) {
        return out;
      }
    }
    return out;
  }

  private List<Whisker> whiskers(int each) {
    List<Double> laneEnds = new ArrayList<>();
    List<Whisker> out = new ArrayList<>();
    for (int c = 1; c <= n + 1; c++) {
      boolean landing = c == n + 1;
      if (!(landing || c == n || c % each == 0 || each == 1)) {
        continue;
      }
      Estimate at = forecast.position(c);
      if (c == 1 && at.halfWidth() == 0) {
        continue;
      }
      double left = x(at.p05());
      double right = x(at.p95());
      int lane = 0;
      while (lane < laneEnds.size() && laneEnds.get(lane) + 4 > left) {
        lane++;
      }
      if (lane == laneEnds.size()) {
        laneEnds.add(right);
      } else {
        laneEnds.set(lane, right);
      }
      out.add(new Whisker(c, left, x(at.p50()), right, lane * LANE, lane, right(c), landing));
    }
    return out;
  }

  // ---- rows ----

  private Row row(double left, double right, double y, boolean first, List<Whisker> all) {
    double flags = first ? figure + caption + 8.5 : 0;
    double top = flags + arcRoom + 4;
    double bottom = top + RUNWAY;
    boolean window = shownWindow() != null;
    double scaleAt = bottom + (window && first ? 11 : 7);
    double under = scaleAt + small + 7;
    List<Whisker> whiskers = new ArrayList<>();
    int lanes = 0;
    for (Whisker w : all) {
      if (w.right() >= left && w.left() <= right) {
        whiskers.add(
            new Whisker(
                w.contact(), round(w.left()), round(w.middle()), round(w.right()), round(under + w.y()), w.lane(), w.filled(),
                w.landing()));
        lanes = Math.max(lanes, w.lane() + 1);
      }
    }
    double height = under + lanes * LANE;
    List<Text> texts = new ArrayList<>();
    List<Tick> ticks = scale(left, right, bottom, scaleAt, texts);
    List<Print> prints = prints(left, right, top, texts);
    List<Tape> tapes = first ? tapes(top, right, texts) : List.of();
    double sand = round(Math.max(left, x(advice.markToSand_m())));
    Double sandX = flat || sand > right ? null : sand;
    return new Row(
        left, right - left, y, height, top, bottom, sandX, sandX == null ? List.of() : StripPaths.grains(sandX, right, top, bottom),
        first && runUpShown() ? StripPaths.gap(breakX(), top, bottom) : null, ticks, bands(left, right, top, whiskers), whiskers, tapes,
        bracket(left, right, bottom), arcs(left, right, top), prints, texts);
  }

  private double lane(int contact, double top) {
    return top + RUNWAY * (right(contact) ? RIGHT_LANE : LEFT_LANE);
  }

  private List<Print> prints(double left, double right, double top, List<Text> texts) {
    List<Print> out = new ArrayList<>();
    double gap = scale * forecast.mean(n + 1) / n;
    int each = gap >= 17 ? 1 : 5;
    for (int c = 1; c <= n; c++) {
      double at = x(forecast.mean(c));
      if (at + footLength < left || at - footLength > right) {
        continue;
      }
      out.add(print(c, at, lane(c, top), right(c)));
      if (c == 1 || c % each == 0) {
        // the first stands on the tape: its number goes beside it
        texts.add(
            new Text(
                round(c == 1 ? at + 6 : at), round(top + RUNWAY * COUNT_LANE + 0.36 * COUNT), COUNT, c == 1 ? "start" : "middle", Text.Tone.COUNT,
                String.valueOf(c)));
      }
    }
    double landing = x(forecast.mean(n + 1));
    if (landing - footLength < right) {
      out.add(print(n + 1, landing, top + RUNWAY * (0.5 - landingSide()), false));
      out.add(print(n + 1, landing, top + RUNWAY * (0.5 + landingSide()), true));
    }
    return out;
  }

  /** How far each foot of the landing lies off the middle, so that the two never touch; a share of the runway. */
  private double landingSide() {
    return Math.max(0.13, 0.29 * footLength / RUNWAY);
  }

  private Print print(int contact, double x, double y, boolean filled) {
    return new Print(contact, round(x), round(y), footLength, filled, Sole.path(x, y, footLength, filled));
  }

  /** How strongly bands are laid on: where many overlap, each more faintly, so that the runway stays to be seen. */
  private double bandOpacity(List<Whisker> whiskers) {
    double covered = whiskers.stream().mapToDouble(w -> w.right() - w.left()).sum();
    double overlap = covered / (scale * (to_m - from_m));
    return round(Math.min(0.34, 0.5 / Math.max(1, overlap)));
  }

  private List<Band> bands(double left, double right, double top, List<Whisker> whiskers) {
    List<Band> out = new ArrayList<>();
    for (Whisker w : whiskers) {
      int c = w.contact();
      Estimate at = forecast.position(c);
      double from = x(at.p05());
      double to = x(at.p95());
      if (to < left || from > right || to - from < 1) {
        continue;
      }
      boolean landing = c == n + 1;
      if (landing && !flat && from >= x(advice.markToSand_m())) {
        continue; // the sand shows the landing's band itself
      }
      double y = landing ? top + RUNWAY / 2 : lane(c, top);
      double bulge = RUNWAY * (landing ? 0.8 : 0.36);
      out.add(new Band(from, to, StripPaths.lens(from, to, y, bulge)));
    }
    return out;
  }

  private List<Arc> arcs(double left, double right, double top) {
    List<Arc> out = new ArrayList<>();
    for (Flight flight : sequence.flights()) {
      double from = x(forecast.mean(flight.order()));
      double to = x(forecast.mean(flight.order() + 1));
      if (to < left || from > right) {
        continue;
      }
      double high = Math.min(arcRoom, 0.8 * (to - from));
      Arc.Kind kind =
          switch (flight.kind()) {
            case HOP -> Arc.Kind.HOP;
            case BOUND -> Arc.Kind.BOUND;
            case JUMP -> Arc.Kind.JUMP;
          };
      double h = kind == Arc.Kind.BOUND ? 0.45 * high : high;
      out.add(new Arc(from, to, kind, StripPaths.arc(from, to, top - 1, h - 1)));
    }
    return out;
  }

  private List<Tick> scale(double left, double right, double bottom, double labelTop, List<Text> texts) {
    StripScale marks = StripScale.of(unit, scale);
    double origin = flat ? 0 : advice.markToSand_m();
    double lead = runUpShown() ? breakX() + 10 : PAD / 2;
    List<Tick> out = new ArrayList<>();
    // on the flat the scale runs with the travel, on the runway against it: distances count from the sand
    int most = (int) Math.ceil((to_m - from_m + lead / scale + 60) / marks.tick_m());
    for (int k = 0; k <= most; k++) {
      double at = flat ? x(origin + k * marks.tick_m()) : x(origin - k * marks.tick_m());
      if (at < Math.max(left, lead) || at > right) {
        continue;
      }
      boolean labelled = k % marks.label() == 0;
      out.add(new Tick(round(at), bottom, labelled ? 6 : 3.5));
      double half = textWidth(marks.write(k), small) / 2;
      if (labelled && at > left + half && at < right - half) {
        texts.add(new Text(round(at), labelTop + small - 1, small, "middle", Text.Tone.SCALE, marks.write(k)));
      }
    }
    return out;
  }

  // ---- marks ----

  private String startFigure() {
    return unit.write(advice.startToMark().p50() + (flat ? 0 : advice.markToSand_m()));
  }

  private double startSize() {
    return form == Width.WIDE ? 17 : 14;
  }

  private List<Tape> tapes(double top, double rowRight, List<Text> texts) {
    List<Tape> out = new ArrayList<>();
    double base = figure + caption + 6.5;
    if (runUpShown()) {
      double at = PAD;
      double size = startSize();
      texts.add(new Text(at, base - size - 2.5, caption, "start", Text.Tone.CAPTION, "START"));
      texts.add(new Text(at, base - 4, size, "start", Text.Tone.FIGURE, startFigure()));
      out.add(new Tape(at, top - 2, RUNWAY + 4, false, base, round(at + textWidth(startFigure(), size))));
    }
    String said = flat ? "0" : unit.write(advice.markToSand_m());
    double width = flat ? textWidth("TAKE-OFF", caption) + 12 : textWidth(said, figure);
    boolean back = markX + width > rowRight - 4;
    double flagTo = back ? markX - width : markX + width;
    String anchor = back ? "end" : "start";
    boolean hollow = !flat && advice.window() == null;
    texts.add(
        new Text(
            round(markX), flat ? base - 4 : base - figure - 2, caption, anchor, Text.Tone.CAPTION, hollow ? "BEST MARK" : "TAKE-OFF"));
    if (!flat) {
      texts.add(new Text(round(markX), base - 4.5, figure, anchor, Text.Tone.FIGURE, said));
    }
    out.add(new Tape(round(markX), top - 2, RUNWAY + 4, hollow, base, round(flagTo)));
    return out;
  }

  private @Nullable Bracket bracket(double left, double right, double bottom) {
    Window window = shownWindow();
    if (window == null) {
      return null;
    }
    double from = x(advice.markToSand_m() - window.max_m());
    double to = x(advice.markToSand_m() - window.min_m());
    if (to < left || from > right) {
      return null;
    }
    return new Bracket(from, to, StripPaths.bracket(from, to, bottom + 1, bottom + 8));
  }

  private double breakX() {
    return PAD + (markX + from_m * scale - PAD) * 0.5;
  }
}
