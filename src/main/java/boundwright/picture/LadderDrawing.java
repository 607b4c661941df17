package boundwright.picture;

import static boundwright.picture.StripPaths.number;
import static boundwright.picture.StripPaths.round;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.footfall.Routine;
import boundwright.picture.LadderPicture.Ladder;
import boundwright.picture.LadderPicture.Mark;
import boundwright.picture.LadderPicture.Rung;
import boundwright.picture.Lettering.Style;
import boundwright.picture.strip.RunwayStrip.Width;
import boundwright.quantity.Notes;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer.Decision;
import boundwright.readiness.GateAnswer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Lays out the ladders: rungs from below upwards, the judged reps to the right of the rung they were done from. */
final class LadderDrawing {
  private static final double LABEL = 62;
  private static final double LADDER = 40;
  private static final double LINE = 15;

  private final List<GateAnswer> answers;
  private final List<Rep> judged;
  private final Width form;
  private final boolean wide;
  private final double column;
  /** From rung to rung. */
  private final double pitch;
  private final double size;
  private final List<Lettering> words = new ArrayList<>();

  LadderDrawing(List<GateAnswer> answers, List<Rep> reps, Width form) {
    this.answers = answers;
    this.judged = reps.stream().filter(Rep::judged).sorted(Comparator.comparing(Rep::date).thenComparing(Rep::id)).toList();
    this.form = form;
    wide = form == Width.WIDE;
    pitch = wide ? 33 : 27;
    // side by side also on small paper, so larger
    size = wide ? 12.5 : 12;
    column = wide ? (form.units() + 20) / Math.max(1, answers.size()) : form.units() + 20;
  }

  LadderPicture draw() {
    List<Ladder> ladders = new ArrayList<>();
    double y = 0;
    double bottom = 0;
    for (int i = 0; i < answers.size(); i++) {
      double left = wide ? i * column : 0;
      double end = ladder(answers.get(i), left, wide ? 0 : y, ladders);
      bottom = Math.max(bottom, end);
      y = end + 24;
    }
    String key = "Filled: clean. Outlined, struck through: faulty. In the order done, reps looked at only.";
    for (String line : Lettering.wrap(key, size, Style.QUIET, form.units())) {
      words.add(new Lettering(0, round(bottom + 20), size, "start", Style.QUIET, line));
      bottom += 15;
    }
    return new LadderPicture(form.units(), round(bottom + 12), form, title(), said(), ladders, words);
  }

  private double ladder(GateAnswer answer, double left, double top, List<Ladder> ladders) {
    List<Rep> mine = judged.stream().filter(r -> DrillFamily.of(r.sequence()) == answer.family()).toList();
    double room = column - 20;
    words.add(new Lettering(round(left), round(top + 9), wide ? 9.5 : 12, "start", Style.CAPTION, answer.family().label().toUpperCase(Locale.ROOT)));
    words.add(new Lettering(round(left), round(top + 34), wide ? 21 : 22, "start", Style.LOUD, answer.decision().label()));
    double head = top + 50;
    words.add(new Lettering(round(left), round(head), size, "start", Style.PLAIN, "now " + Athlete.fromSteps(answer.rung())));
    for (String line : missing(answer, room)) {
      head += LINE;
      words.add(new Lettering(round(left), round(head), size, "start", Style.PLAIN, line));
    }
    SortedSet<Integer> all = new TreeSet<>(Routine.RUNGS);
    all.add(answer.rung());
    mine.forEach(r -> all.add(r.approachSteps()));
    List<Integer> rungs = new ArrayList<>(all);
    double lowest = top + 50 + LINE * (wide ? lines(room) : missing(answer, room).size()) + 30 + pitch * (rungs.size() - 1);
    double railLeft = left + LABEL;
    double railRight = railLeft + LADDER;
    List<Rung> drawn = new ArrayList<>();
    List<Mark> marks = new ArrayList<>();
    double hereY = lowest;
    for (int k = 0; k < rungs.size(); k++) {
      int steps = rungs.get(k);
      double y = lowest - pitch * k;
      boolean here = steps == answer.rung();
      hereY = here ? y : hereY;
      String foot = here ? Sole.path(railLeft + LADDER / 2, y - 6.5, 22, true) : "";
      drawn.add(new Rung(steps, here, round(railLeft), round(railRight), round(y), foot));
      words.add(
          new Lettering(round(railLeft - 8), round(y + 3.8), size, "end", here ? Style.BOLD : Style.PLAIN, steps == 0 ? "standing" : String.valueOf(steps)));
      marks(mine.stream().filter(r -> r.approachSteps() == steps).toList(), steps, railRight + 26, left + room, y, marks);
    }
    String upright = " " + number(lowest + 10) + "V" + number(lowest - pitch * (rungs.size() - 1) - 12);
    String rails = "M" + number(railLeft) + upright + "M" + number(railRight) + upright;
    ladders.add(new Ladder(answer.family(), rails, drawn, marks, arrow(answer.decision(), railRight + 12, hereY)));
    return lowest + 10;
  }

  private String arrow(Decision decision, double x, double y) {
    double to =
        switch (decision) {
          case ADD_TWO_STEPS -> y - pitch;
          case GO_BACK -> y + pitch;
          case STAY -> y;
        };
    if (to == y) {
      return "";
    }
    double tip = to > y ? -5 : 5;
    return "M" + number(x) + " " + number(y) + "V" + number(to) + "M" + number(x - 4) + " " + number(to + tip) + "L" + number(x) + " "
        + number(to) + "L" + number(x + 4) + " " + number(to + tip);
  }

  /** Rows of marks about the height of the rung; many make smaller marks, none is left out. */
  private void marks(List<Rep> reps, int steps, double from, double to, double y, List<Mark> out) {
    double apart = 10.5;
    int rows = rows(reps.size(), apart, to - from);
    while (rows * apart > pitch - 4) {
      apart *= 0.92;
      rows = rows(reps.size(), apart, to - from);
    }
    int each = perRow(apart, to - from);
    for (int i = 0; i < reps.size(); i++) {
      int line = i / each;
      double x = from + apart * (i % each + 0.5);
      out.add(new Mark(steps, reps.get(i).faults().isEmpty(), round(x), round(y + apart * (line - (rows - 1) / 2.0)), round(apart * 0.33)));
    }
  }

  private static int perRow(double apart, double room) {
    return Math.max(1, (int) (room / apart));
  }

  private static int rows(int n, double apart, double room) {
    return Math.max(1, (n + perRow(apart, room) - 1) / perRow(apart, room));
  }

  /** What keeps the athlete on the rung, in few words; the sentences stand beside the picture. */
  private List<String> missing(GateAnswer answer, double room) {
    if (answer.decision() != Decision.STAY) {
      return List.of();
    }
    String text =
        answer.missingReps() > 0
            ? "missing: " + Notes.counted(answer.missingReps(), "clean rep") + ", " + Notes.counted(answer.missingDays(), "day")
            : answer.evidence().stream().filter(e -> !e.met()).map(e -> e.name().label()).collect(Collectors.joining(", "));
    return text.isEmpty() ? List.of() : Lettering.wrap(answer.missingReps() > 0 ? text : "not there: " + text, size, Style.PLAIN, room);
  }

  /** Side by side all heads are as high as the highest, so that the rungs stand level. */
  private int lines(double room) {
    return answers.stream().mapToInt(a -> missing(a, room).size()).max().orElse(0);
  }

  private String title() {
    return "The ladder of approach steps: where the athlete stands and what is advised";
  }

  private String said() {
    StringBuilder out = new StringBuilder();
    for (GateAnswer a : answers) {
      List<Rep> mine = judged.stream().filter(r -> DrillFamily.of(r.sequence()) == a.family()).toList();
      out.append(a.family().label()).append(": ").append(Athlete.fromSteps(a.rung())).append(", the answer is ").append(a.decision().label())
          .append(". ").append(a.why()).append(' ');
      for (int steps : new TreeSet<>(mine.stream().map(Rep::approachSteps).toList())) {
        List<Rep> there = mine.stream().filter(r -> r.approachSteps() == steps).toList();
        out.append(there.stream().filter(r -> r.faults().isEmpty()).count()).append(" of ").append(there.size()).append(" reps looked at clean ")
            .append(Athlete.fromSteps(steps)).append(". ");
      }
    }
    return out.toString().strip();
  }
}
