package boundwright.card;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.card.CutPlan.CutDrill;
import boundwright.card.SessionCard.Day;
import boundwright.card.SessionCard.SquadCell;
import boundwright.card.SessionCard.SquadDrill;
import boundwright.card.SessionCard.SquadPage;
import boundwright.card.SessionCard.SquadRow;
import boundwright.card.SessionCard.TapeLine;
import boundwright.footfall.Sequence;
import boundwright.load.DayVerdict;
import boundwright.quantity.LengthUnit;
import boundwright.runway.AdviceWarnings;
import boundwright.runway.CoachSettings;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Tapes;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/** Makes the page of the squad: everybody's marks in one table with boxes to write in, and the fewest tapes that serve them. */
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
      d.differentPieces().forEach(piece -> drills.add(column(d, piece)));
    }
    List<SquadRow> rows = new ArrayList<>();
    Set<Sign> signs = EnumSet.noneOf(Sign.class);
    Map<String, List<String>> minds = new LinkedHashMap<>();
    Map<Long, DayVerdict> days = marks.days(athletes);
    List<Athlete> bounding = athletes.stream().filter(a -> !Day.of(days.get(a.id())).held()).toList();
    List<Column> columns = columns(plan, bounding);
    for (Athlete athlete : athletes) {
      DayVerdict verdict = days.get(athlete.id());
      Day day = marks.day(athlete, verdict);
      if (day.held()) {
        rows.add(new SquadRow(athlete.name(), "", day, List.of()));
        continue;
      }
      if (!day.body().isEmpty()) {
        minds.computeIfAbsent(day.body(), w -> new ArrayList<>()).add(athlete.name());
      }
      day.backs().forEach(back -> minds.computeIfAbsent(back, w -> new ArrayList<>()).add(athlete.name()));
      Set<Sign> load = Sign.of(verdict);
      signs.addAll(load);
      rows.add(new SquadRow(athlete.name(), Sign.written(load), day, cells(athlete, columns, signs)));
    }
    if (settings.facility().surface() == Surface.CONCRETE) {
      minds.put(AdviceWarnings.CONCRETE, List.of());
    }
    Tapes tapes = marks.tapes(bounding, plan.asPlan(title), settings);
    return new SquadPage(
        measured(), drills, rows, tapes.tapes().stream().map(t -> line(t, drills, rows.size())).toList(), signs.stream().map(Sign::legend).toList(),
        minds.entrySet().stream().map(e -> e.getValue().isEmpty() ? e.getKey() : String.join(", ", e.getValue()) + ": " + e.getKey()).toList());
  }

  /** A piece of a drill with everybody's marks. */
  private record Column(CutDrill drill, Sequence piece, Map<Long, MarkAdvice> marks) {}

  private List<Column> columns(CutPlan plan, List<Athlete> bounding) {
    List<Column> out = new ArrayList<>();
    for (CutDrill d : plan.drills()) {
      d.differentPieces().forEach(piece -> out.add(new Column(d, piece, marks.advise(bounding, piece, d.drill(), settings))));
    }
    return out;
  }

  private List<SquadCell> cells(Athlete athlete, List<Column> columns, Set<Sign> all) {
    List<SquadCell> out = new ArrayList<>();
    for (Column c : columns) {
      MarkAdvice advice = Objects.requireNonNull(c.marks.get(athlete.id()), "marks for everybody who bounds");
      Set<Sign> signs = Sign.of(advice, c.drill.drill(), settings);
      all.addAll(signs);
      out.add(cell(advice, c.drill, c.piece, Sign.written(signs)));
    }
    return out;
  }

  private String measured() {
    return (unit == LengthUnit.METRES ? "Metres" : "Feet and inches") + " from the edge of the sand; start: back from the mark; flat: ground needed.";
  }

  private SquadDrill column(CutDrill d, Sequence piece) {
    List<String> turned = new ArrayList<>();
    for (int s = 0; s < d.sets().size(); s++) {
      if (d.sets().get(s).mirrored()) {
        turned.add("set " + (s + 1) + " " + d.sets().get(s).sequence().text());
      }
    }
    Integer steps = d.drill().steps();
    return new SquadDrill(
        d.number(), d.isCut() ? piece.text() : d.drill().sequence().text(), steps == null ? "own steps" : Athlete.fromSteps(steps),
        SessionCards.dose(d.sets().size(), d.drill().reps()), String.join(", ", turned), !d.drill().inSand(), reps(d, piece));
  }

  /** Reps of a piece: those of each set that is made of it, mirrored or not. */
  private static int reps(CutDrill d, Sequence piece) {
    long in = d.pieces().stream().filter(p -> p.contacts().equals(piece.contacts())).count();
    return (int) in * d.drill().sets() * d.drill().reps();
  }

  private SquadCell cell(MarkAdvice advice, CutDrill d, Sequence piece, String signs) {
    boolean inSand = d.drill().inSand();
    boolean open = !inSand || advice.window() != null;
    String start = !inSand || advice.forecast().approachSteps() == 0 ? "" : "start " + bare(advice.startToMark().p50());
    String note = open ? start : start.isEmpty() ? "unsure" : start + ", unsure";
    return new SquadCell(bare(inSand ? advice.markToSand_m() : advice.groundNeeded_m()), open, note, signs, reps(d, piece));
  }

  /** Without the unit that stands above the table: {@code 12.35}, {@code 40 ft 6¼}. */
  private String bare(double metres) {
    return unit.write(metres).replaceFirst(" (m|in)$", "").replace(" 1/4", "\u00bc").replace(" 1/2", "\u00bd").replace(" 3/4", "\u00be");
  }

  /** All names, or that it is everybody on the sheet: their names stand in the table. */
  private static String names(List<String> names, int everybody) {
    return names.size() > 1 && names.size() == everybody ? "everybody" : String.join(", ", names);
  }

  private TapeLine line(Tapes.Tape tape, List<SquadDrill> drills, int everybody) {
    boolean several = drills.stream().filter(d -> !d.flat()).count() > 1;
    Map<String, List<String>> byDrill = new LinkedHashMap<>();
    for (Tapes.Wish wish : tape.serves()) {
      String number =
          drills.stream()
              .filter(d -> several && !d.flat() && Sequence.parse(d.sequence()).contacts().equals(wish.advice().forecast().sequence().contacts()))
              .map(d -> "(" + d.number() + ") ")
              .findFirst()
              .orElse("");
      byDrill.computeIfAbsent(number, n -> new ArrayList<>()).add(wish.athlete());
    }
    return new TapeLine(
        bare(tape.markToSand_m()),
        byDrill.entrySet().stream().map(e -> e.getKey() + names(e.getValue().stream().distinct().toList(), everybody)).collect(Collectors.joining("; ")));
  }
}
