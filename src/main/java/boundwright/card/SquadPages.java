package boundwright.card;

import boundwright.athlete.Athlete;
import boundwright.card.CutPlan.CutDrill;
import boundwright.card.SessionCard.Day;
import boundwright.card.SessionCard.SquadCell;
import boundwright.card.SessionCard.SquadDrill;
import boundwright.card.SessionCard.SquadPage;
import boundwright.card.SessionCard.SquadRow;
import boundwright.card.SessionCard.TapeLine;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.picture.StripWords;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Rungs;
import boundwright.runway.Tapes;
import boundwright.runway.Window;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Makes the page of the squad: everybody's marks in one table, and the fewest tapes that serve them. */
final class SquadPages {
  private final SessionCards.Marks marks;
  private final CoachSettings settings;
  private final LengthUnit unit;

  SquadPages(SessionCards.Marks marks, CoachSettings settings) {
    this.marks = marks;
    this.settings = settings;
    this.unit = settings.unit();
  }

  SquadPage page(List<Athlete> athletes, CutPlan plan, String title) {
    List<SquadDrill> drills = new ArrayList<>();
    for (CutDrill d : plan.drills()) {
      for (Sequence piece : d.differentPieces()) {
        drills.add(column(d, piece));
      }
    }
    List<SquadRow> rows = new ArrayList<>();
    Map<String, List<String>> minds = new LinkedHashMap<>();
    Rungs rungs = marks.rungs();
    Map<Long, DayVerdict> days = marks.days(athletes);
    List<Athlete> bounding = new ArrayList<>();
    for (Athlete athlete : athletes) {
      Day day = Day.of(days.get(athlete.id()));
      if (day.held()) {
        rows.add(new SquadRow(athlete.name(), rung(athlete.rung()), day, List.of()));
        continue;
      }
      bounding.add(athlete);
      List<SquadCell> cells = new ArrayList<>();
      for (CutDrill d : plan.drills()) {
        for (Sequence piece : d.differentPieces()) {
          MarkAdvice advice = marks.advise(athlete, piece, rungs.stepsFor(athlete, d.drill()), settings);
          cells.add(cell(advice, d.drill().inSand()));
          for (String warning : SessionCards.warnings(advice, d.drill(), settings)) {
            List<String> who = minds.computeIfAbsent(warning, w -> new ArrayList<>());
            String name = athlete.name() + " (" + d.number() + ")";
            if (!who.contains(name)) {
              who.add(name);
            }
          }
        }
      }
      rows.add(new SquadRow(athlete.name(), rung(athlete.rung()), day, cells));
    }
    Tapes tapes = marks.tapes(bounding, plan.asPlan(title), settings);
    return new SquadPage(
        drills, rows, tapes.tapes().stream().map(this::line).toList(), proof(tapes),
        tapes.without().stream().map(w -> w.athlete() + ", " + w.drill() + ": no mark works.").toList(),
        minds.entrySet().stream().map(e -> String.join(", ", e.getValue()) + ": " + e.getKey()).toList());
  }

  private static String rung(int steps) {
    return steps == 0 ? "standing" : Notes.counted(steps, "step");
  }

  private SquadDrill column(CutDrill d, Sequence piece) {
    List<String> turned = new ArrayList<>();
    for (int s = 0; s < d.sets().size(); s++) {
      if (d.sets().get(s).mirrored()) {
        turned.add("set " + (s + 1) + ": " + d.sets().get(s).sequence().text());
      }
    }
    Integer steps = d.drill().steps();
    return new SquadDrill(
        d.number(), d.drill().sequence().text(), d.isCut() ? piece.text() : "", steps == null ? "own steps" : StripWords.from(steps),
        SessionCards.dose(d.sets().size(), d.drill().reps()), d.contacts(Foot.RIGHT) + " right, " + d.contacts(Foot.LEFT) + " left",
        String.join("; ", turned));
  }

  private SquadCell cell(MarkAdvice advice, boolean inSand) {
    String start = advice.forecast().approachSteps() == 0 ? "" : "start " + unit.write(advice.startToMark().p50());
    return inSand
        ? new SquadCell(unit.write(advice.markToSand_m()), advice.window() != null, start)
        : new SquadCell("flat", true, "ground " + unit.write(advice.groundNeeded_m()));
  }

  private TapeLine line(Tapes.Tape tape) {
    Map<String, List<String>> byDrill = new LinkedHashMap<>();
    tape.serves().forEach(w -> byDrill.computeIfAbsent(w.drill(), d -> new ArrayList<>()).add(w.athlete()));
    return new TapeLine(
        unit.write(tape.markToSand_m()),
        byDrill.entrySet().stream().map(e -> e.getKey() + ": " + String.join(", ", e.getValue())).toList());
  }

  private String proof(Tapes tapes) {
    if (tapes.proof().isEmpty()) {
      return "";
    }
    if (tapes.proof().size() == 1) {
      return "One tape is the fewest there can be.";
    }
    String windows =
        tapes.proof().stream().map(w -> w.athlete() + ", " + w.drill() + window(w.advice().window())).collect(Collectors.joining("; "));
    return "Fewer than " + tapes.tapes().size() + " will not do, because no two of these share a mark: " + windows + ".";
  }

  private String window(@Nullable Window window) {
    return window == null ? "" : " (works from " + unit.write(window.min_m()) + " to " + unit.write(window.max_m()) + ")";
  }
}
