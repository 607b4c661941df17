package boundwright.card;

import static boundwright.card.StripPaths.number;
import static boundwright.card.StripPaths.round;

import boundwright.card.LadderPicture.Ladder;
import boundwright.card.LadderPicture.Mark;
import boundwright.card.LadderPicture.Rung;
import boundwright.card.Lettering.Style;
import boundwright.card.RunwayStrip.Width;
import boundwright.flight.Rep;
import boundwright.footfall.Routine;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.GateAnswer.Decision;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/** Lays out the ladders: rungs from below upwards, the judged reps to the right of the rung they were done from. */
final class LadderDrawing {
  private static final double PITCH = 33;
  private static final double LABEL = 52;
  private static final double LADDER = 40;
  private static final double SIZE = 11;
  private static final double HEAD = 62;
  private static final double LINE = 14;

  private final List<GateAnswer> answers;
  private final List<Rep> judged;
  private final Width form;
  private final boolean wide;
  private final double column;
  private final List<Lettering> words = new ArrayList<>();

  LadderDrawing(List<GateAnswer> answers, List<Rep> reps, Width form) {
    this.answers = answers;
    this.judged = reps.stream().filter(Rep::judged).sorted(Comparator.comparing(Rep::date).thenComparing(Rep::id)).toList();
    this.form = form;
    wide = form == Width.WIDE;
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
    String key = "Filled: clean. Outlined, struck through: faulty. In the order done, judged reps only.";
    for (String line : Lettering.wrap(key, SIZE, Style.QUIET, form.units())) {
      words.add(new Lettering(0, round(bottom + 20), SIZE, "start", Style.QUIET, line));
      bottom += 15;
    }
    return new LadderPicture(form.units(), round(bottom + 12), form, title(), said(), ladders, words);
  }

  private double ladder(GateAnswer answer, double left, double top, List<Ladder> ladders) {
    List<Rep> mine = judged.stream().filter(r -> DrillFamily.of(r.sequence()) == answer.family()).toList();
    double room = column - 20;
    words.add(new Lettering(round(left), round(top + 9), 8.5, "start", Style.CAPTION, answer.family().label().toUpperCase(java.util.Locale.ROOT)));
    words.add(new Lettering(round(left), round(top + 34), wide ? 20 : 22, "start", Style.LOUD, answer.decision().label()));
    words.add(new Lettering(round(left), round(top + 50), SIZE, "start", Style.PLAIN, now(answer)));
    SortedSet<Integer> all = new TreeSet<>(Routine.RUNGS);
    all.add(answer.rung());
    mine.forEach(r -> all.add(r.approachSteps()));
    List<Integer> rungs = new ArrayList<>(all);
    double lowest = top + HEAD + 24 + PITCH * (rungs.size() - 1);
    double railLeft = left + LABEL;
    double railRight = railLeft + LADDER;
    List<Rung> drawn = new ArrayList<>();
    List<Mark> marks = new ArrayList<>();
    double hereY = lowest;
    for (int k = 0; k < rungs.size(); k++) {
      int steps = rungs.get(k);
      double y = lowest - PITCH * k;
      boolean here = steps == answer.rung();
      hereY = here ? y : hereY;
      String foot = here ? Sole.path(railLeft + LADDER / 2, y - 6.5, 22, true) : "";
      drawn.add(new Rung(steps, here, round(railLeft), round(railRight), round(y), foot));
      words.add(
          new Lettering(round(railLeft - 8), round(y + 3.8), SIZE, "end", here ? Style.BOLD : Style.PLAIN, steps == 0 ? "standing" : String.valueOf(steps)));
      marks(mine.stream().filter(r -> r.approachSteps() == steps).toList(), steps, railRight + 26, left + room, y, marks);
    }
    String rails = "";
    for (double x : new double[] {railLeft, railRight}) {
      rails += "M" + number(x) + " " + number(lowest + 10) + "V" + number(lowest - PITCH * (rungs.size() - 1) - 12);
    }
    ladders.add(new Ladder(answer.family(), rails, drawn, marks, arrow(answer.decision(), railRight + 12, hereY)));
    return lowest + 10;
  }

  private static String arrow(Decision decision, double x, double y) {
    double to =
        switch (decision) {
          case ADD_TWO_STEPS -> y - PITCH;
          case GO_BACK -> y + PITCH;
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
  private static void marks(List<Rep> reps, int steps, double from, double to, double y, List<Mark> out) {
    double pitch = 10.5;
    int rows = rows(reps.size(), pitch, to - from);
    while (rows * pitch > PITCH - 4) {
      pitch *= 0.92;
      rows = rows(reps.size(), pitch, to - from);
    }
    int each = perRow(pitch, to - from);
    for (int i = 0; i < reps.size(); i++) {
      double row = i / each - (rows - 1) / 2.0;
      double x = from + pitch * (i % each + 0.5);
      out.add(new Mark(steps, reps.get(i).faults().isEmpty(), round(x), round(y + row * pitch), round(pitch * 0.33)));
    }
  }

  private static int perRow(double pitch, double room) {
    return Math.max(1, (int) (room / pitch));
  }

  private static int rows(int n, double pitch, double room) {
    return Math.max(1, (n + perRow(pitch, room) - 1) / perRow(pitch, room));
  }

  private static String now(GateAnswer answer) {
    String now = "now " + StripWords.from(answer.rung());
    return answer.decision() == Decision.STAY && answer.missingReps() > 0
        ? now + "; missing: " + SessionCards.plural(answer.missingReps(), "clean rep")
        : now;
  }

  private String title() {
    return "The ladder of approach steps: where the athlete stands and what the gate answers";
  }

  private String said() {
    StringBuilder out = new StringBuilder();
    for (GateAnswer a : answers) {
      List<Rep> mine = judged.stream().filter(r -> DrillFamily.of(r.sequence()) == a.family()).toList();
      out.append(a.family().label()).append(": ").append(StripWords.from(a.rung())).append(", the gate says ").append(a.decision().label())
          .append(". ").append(a.why()).append(' ');
      for (int steps : new TreeSet<>(mine.stream().map(Rep::approachSteps).toList())) {
        List<Rep> there = mine.stream().filter(r -> r.approachSteps() == steps).toList();
        out.append(there.stream().filter(r -> r.faults().isEmpty()).count()).append(" of ").append(there.size()).append(" judged reps clean ")
            .append(StripWords.from(steps)).append(". ");
      }
    }
    return out.toString().strip();
  }
}
