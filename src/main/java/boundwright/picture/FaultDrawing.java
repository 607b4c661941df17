package boundwright.picture;

import static boundwright.picture.StripPaths.round;

import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.picture.FaultPicture.Cell;
import boundwright.picture.FaultPicture.Frame;
import boundwright.picture.FaultPicture.Head;
import boundwright.picture.FaultPicture.Line;
import boundwright.picture.Lettering.Style;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Notes;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultMap;
import boundwright.technique.FaultTrends.Course;
import boundwright.technique.FaultTrends;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lays out the map of faults and contacts. */
final class FaultDrawing {
  private static final double SIZE = 12;
  private static final double ROW = 25;
  private static final double INSET = 2;

  private final FaultTrends trends;
  private final FaultCatalogue faults;
  private final FaultMap map;
  private final Sequence sequence;
  private final Width form;
  private final boolean wide;
  private final double label;
  private final double last;
  private final double cell;
  private final int perBlock;
  private final int judgedReps;

  private final List<Head> heads = new ArrayList<>();
  private final List<Cell> cells = new ArrayList<>();
  private final List<Frame> frames = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private final List<Lettering> words = new ArrayList<>();

  FaultDrawing(FaultTrends trends, FaultCatalogue faults, Width form) {
    this.trends = trends;
    this.faults = faults;
    this.map = trends.map();
    this.sequence = trends.sequence();
    this.form = form;
    wide = form == Width.WIDE;
    label = wide ? 150 : 108;
    last = wide ? 90 : 40;
    int most = wide ? 12 : 6;
    perBlock = Math.min(most, Math.max(1, contactsShown()));
    cell = Math.min(wide ? 46 : 34, (form.units() - label - last) / (perBlock + 1));
    judgedReps = trends.sessions().stream().mapToInt(FaultTrends.Session::judged).sum();
  }

  FaultPicture draw() {
    int clean = trends.sessions().stream().mapToInt(FaultTrends.Session::clean).sum();
    words.add(new Lettering(0, 9, wide ? 8.5 : 12, "start", Style.CAPTION, "FAULTS BY CONTACT"));
    words.add(
        new Lettering(0, 30, 15, "start", Style.BOLD, sequence.text()));
    double after = Lettering.width(sequence.text(), 15, Style.BOLD) + 12;
    String counts = Notes.counted(judgedReps, "rep") + " looked at, " + clean + " clean";
    boolean fits = after + Lettering.width(counts, SIZE, Style.PLAIN) <= form.units();
    words.add(new Lettering(fits ? round(after) : 0, fits ? 30 : 46, SIZE, "start", Style.PLAIN, counts));
    double y = fits ? 44 : 60;
    if (map.rows().isEmpty()) {
      words.add(new Lettering(0, y + 16, SIZE, "start", Style.PLAIN, "Nothing was seen wrong."));
      return done(y + 16);
    }
    int shown = contactsShown();
    List<String> empty = new ArrayList<>();
    for (int from = 1; from <= shown; from += perBlock) {
      int to = Math.min(shown, from + perBlock - 1);
      List<FaultMap.Row> rows = rows(from, to);
      if (rows.isEmpty()) {
        empty.add(from + " to " + to);
      } else {
        y = block(from, to, rows, y) + 16;
      }
    }
    if (shown < map.contacts()) {
      empty.add(shown + 1 + " to " + map.contacts());
    }
    y += 4;
    for (String line : key(empty)) {
      words.add(new Lettering(0, round(y), SIZE, "start", Style.QUIET, line));
      y += 15;
    }
    return done(y - 15);
  }

  private FaultPicture done(double bottom) {
    return new FaultPicture(form.units(), round(bottom + 8), form, title(), said(), heads, cells, frames, lines, words);
  }

  /** All contacts that fit into one block; beyond it those up to the last on which something was seen. */
  private int contactsShown() {
    int n = map.contacts();
    int seen = 0;
    for (FaultMap.Row row : map.rows()) {
      for (int c = 1; c <= n; c++) {
        seen = row.perContact().get(c - 1) > 0 ? Math.max(seen, c) : seen;
      }
    }
    return Math.min(n, Math.max(seen, wide ? 12 : 6));
  }

  /** The faults that have something to show in this block. */
  private List<FaultMap.Row> rows(int from, int to) {
    return map.rows().stream()
        .filter(
            row ->
                row.perContact().subList(from - 1, to).stream().anyMatch(n -> n > 0)
                    || (from == 1 && row.nowhere() > 0)
                    || lookAt(row.key()).filter(at -> within(at, from, to)).isPresent())
        .toList();
  }

  /** Whether a contact lies in a block; the run-up, 0, lies in the first. */
  private static boolean within(int contact, int from, int to) {
    return (contact >= from && contact <= to) || (contact == 0 && from == 1);
  }

  private List<String> key(List<String> empty) {
    StringBuilder key = new StringBuilder("Figures: reps with the fault on that contact, the darker the larger the share.");
    if (!frames.isEmpty()) {
      key.append(" Framed: look one contact earlier than it first shows.");
    }
    if (!wide && map.rows().stream().anyMatch(r -> r.nowhere() > 0)) {
      key.append(" ?: it was not said on which contact.");
    }
    if (!empty.isEmpty()) {
      key.append(" Contacts ").append(String.join(", ", empty)).append(": nothing seen.");
    }
    return Lettering.wrap(key.toString(), SIZE, Style.QUIET, form.units());
  }

  // ---- one block ----

  private double block(int from, int to, List<FaultMap.Row> rows, double top) {
    boolean first = from == 1;
    double headY = top + 20;
    if (first) {
      words.add(new Lettering(round(x(from, 0) + cell / 2), headY + 4, wide ? 10 : 12, "middle", Style.QUIET, "run-up"));
      words.add(new Lettering(round(end(from, to) + last / 2), headY + 4, 12, "middle", Style.QUIET, wide ? "not said where" : "?"));
    }
    for (int c = from; c <= to; c++) {
      boolean filled = sequence.contacts().get(c - 1) == Foot.RIGHT;
      double middle = x(from, c) + cell / 2;
      heads.add(new Head(c, filled, Sole.path(middle, headY - 5, Math.min(22, cell * 0.7), filled)));
      words.add(new Lettering(round(middle), headY + 13, 12, "middle", Style.QUIET, String.valueOf(c)));
    }
    double y = headY + 19;
    for (FaultMap.Row row : rows) {
      lines.add(new Line(0, round(end(from, to) + (first ? last : 0)), round(y)));
      row(row, from, to, y, first);
      y += ROW;
    }
    lines.add(new Line(0, round(end(from, to) + (first ? last : 0)), round(y)));
    return y;
  }

  private void row(FaultMap.Row row, int from, int to, double y, boolean first) {
    String name = faults.label(row.key());
    double size = SIZE + 0.5;
    while (Lettering.width(name, size, Style.PLAIN) > label - 6 && size > 12) {
      size -= 0.5;
    }
    words.add(new Lettering(0, round(y + ROW / 2 + 4), size, "start", Style.PLAIN, name));
    for (int c = from; c <= to; c++) {
      int count = row.perContact().get(c - 1);
      if (count > 0) {
        cell(row.key(), c, count, map.judgedPerContact().get(c - 1), x(from, c), y, cell);
      }
    }
    if (first && row.nowhere() > 0) {
      words.add(new Lettering(round(end(from, to) + last / 2), round(y + ROW / 2 + 4), SIZE, "middle", Style.PLAIN, String.valueOf(row.nowhere())));
    }
    lookAt(row.key())
        .filter(at -> within(at, from, to))
        .ifPresent(
            at -> {
              frames.add(new Frame(row.key(), at, round(x(from, at) + 1), round(y + 1), round(cell - 2), ROW - 2));
              if (at == 0 || row.perContact().get(at - 1) == 0) {
                words.add(new Lettering(round(x(from, at) + cell / 2), round(y + ROW / 2 + 3.5), wide ? 10 : 12, "middle", Style.PLAIN, "look"));
              }
            });
  }

  private void cell(String key, int contact, int count, int of, double x, double y, double width) {
    double depth = count / (double) of;
    cells.add(
        new Cell(key, contact, count, of, round(depth), round(x + INSET), round(y + INSET), round(width - 2 * INSET), ROW - 2 * INSET));
    words.add(
        new Lettering(round(x + width / 2), round(y + ROW / 2 + 4.2), SIZE + 1, "middle", depth > 0.8 ? Style.ON_DARK : Style.BOLD, String.valueOf(count)));
  }

  /** Left edge of a column; 0 is the run-up, which only the first block has. */
  private double x(int from, int contact) {
    return label + cell * (from == 1 ? contact : contact - from + 1);
  }

  private double end(int from, int to) {
    return x(from, to) + cell;
  }

  private Optional<Integer> lookAt(String key) {
    return trends.courses().stream().filter(c -> c.key().equals(key)).findFirst().flatMap(Course::lookAt);
  }

  // ---- in words ----

  private String title() {
    return "Faults by contact in " + sequence.text();
  }

  private String said() {
    StringBuilder out = new StringBuilder();
    out.append(Notes.counted(judgedReps, "rep")).append(" looked at. ");
    for (FaultMap.Row row : map.rows()) {
      out.append(faults.label(row.key())).append(": in ").append(Notes.counted(row.reps(), "rep"));
      for (int c = 1; c <= map.contacts(); c++) {
        if (row.perContact().get(c - 1) > 0) {
          out.append(", ").append(row.perContact().get(c - 1)).append(" on contact ").append(c);
        }
      }
      out.append(". ");
      trends.courses().stream()
          .filter(c -> c.key().equals(row.key()))
          .findFirst()
          .ifPresent(c -> out.append(c.whereToLook(sequence)).append(' '));
    }
    return out.toString().strip();
  }
}
