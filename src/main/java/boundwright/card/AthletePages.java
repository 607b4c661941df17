package boundwright.card;

import boundwright.athlete.Athlete;
import boundwright.card.CutPlan.CutDrill;
import boundwright.card.SessionCard.AthletePage;
import boundwright.card.SessionCard.Day;
import boundwright.card.SessionCard.DrillBlock;
import boundwright.card.SessionCard.Figure;
import boundwright.card.SessionCard.SetLine;
import boundwright.card.SessionCard.Variant;
import boundwright.footfall.Foot;
import boundwright.footfall.LegBalance.ProposedSet;
import boundwright.footfall.Sequence;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.InHundred;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Opener;
import boundwright.runway.Window;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Makes the page of one athlete. */
final class AthletePages {
  private final SessionCards.Marks marks;
  private final CoachSettings settings;
  private final LengthUnit unit;

  AthletePages(SessionCards.Marks marks, CoachSettings settings) {
    this.marks = marks;
    this.settings = settings;
    this.unit = settings.unit();
  }

  AthletePage page(Athlete athlete, CutPlan plan) {
    Day day = marks.day(athlete, marks.days(List.of(athlete)).get(athlete.id()));
    List<DrillBlock> drills = new ArrayList<>();
    if (!day.held()) {
      plan.drills().forEach(drill -> drills.add(block(athlete, drill)));
    }
    return new AthletePage(
        athlete.name(), athlete.level().label(), Athlete.fromSteps(athlete.rung()), day, drills, day.held() ? 0 : plan.right(),
        day.held() ? 0 : plan.left());
  }

  private DrillBlock block(Athlete athlete, CutDrill drill) {
    int steps = marks.rungs().stepsFor(athlete, drill.drill());
    boolean flat = !drill.drill().inSand();
    List<Variant> variants = new ArrayList<>();
    Set<String> minds = new LinkedHashSet<>();
    MarkAdvice first = null;
    for (ProposedSet set : drill.variants()) {
      MarkAdvice advice = marks.advise(athlete, set.sequence(), steps, settings);
      first = first == null ? advice : first;
      variants.add(variant(set, advice, flat, variants.isEmpty() || !set.mirrored()));
      minds.addAll(SessionCards.warnings(advice, drill.drill(), settings));
      if (!flat) {
        advice.openers().stream().map(Opener::said).forEach(minds::add);
      }
    }
    if (first == null) {
      throw new IllegalStateException("a drill has at least one set");
    }
    List<SetLine> sets = new ArrayList<>();
    for (int s = 0; s < drill.sets().size(); s++) {
      ProposedSet set = drill.sets().get(s);
      sets.add(new SetLine(s + 1, set.sequence().text(), set.mirrored(), drill.drill().reps()));
    }
    return new DrillBlock(
        drill.number(), drill.drill().sequence().text(), Athlete.fromSteps(steps), flat,
        SessionCards.dose(drill.sets().size(), drill.drill().reps()),
        drill.contacts(Foot.RIGHT), drill.contacts(Foot.LEFT), cut(drill, settings.setContacts()), variants, sets, first.sure(), first.from(),
        List.copyOf(minds));
  }

  static String cut(CutDrill drill, int setContacts) {
    return drill.isCut()
        ? drill.drill().sequence().size() + " contacts, cut into sets of at most " + setContacts + ": "
            + drill.pieces().stream().map(Sequence::text).collect(Collectors.joining(", then ")) + "."
        : "";
  }

  private Variant variant(ProposedSet set, MarkAdvice advice, boolean flat, boolean drawn) {
    RunwayStrip strip = null;
    RunwayStrip narrow = null;
    if (drawn) {
      strip = flat ? RunwayStrip.ofFlat(advice, unit) : RunwayStrip.of(advice, unit);
      narrow =
          flat
              ? RunwayStrip.ofFlat(advice, unit, RunwayStrip.Width.NARROW)
              : RunwayStrip.of(advice, unit, RunwayStrip.Width.NARROW);
    }
    return new Variant(
        set.sequence().text(), set.mirrored(), set.sequence().count(Foot.RIGHT), set.sequence().count(Foot.LEFT),
        figures(advice, flat), strip, narrow);
  }

  private List<Figure> figures(MarkAdvice advice, boolean flat) {
    List<Figure> out = new ArrayList<>();
    boolean standing = advice.forecast().approachSteps() == 0;
    Figure start =
        standing
            ? new Figure("Start mark", "standing", "no run-up", true)
            : new Figure("Start mark", unit.write(advice.startToMark().p50()), "to the take-off mark", true);
    if (flat) {
      out.add(new Figure("Level ground", unit.write(advice.groundNeeded_m()), "start to landing, on the flat", true));
      out.add(start);
      out.add(
          new Figure(
              "Landing", unit.write(advice.forecast().landing().p50()),
              unit.writeSpread(advice.forecast().landing().halfWidth()) + ", nine in ten", false));
      return out;
    }
    Window window = advice.window();
    out.add(new Figure("Take-off mark", unit.write(advice.markToSand_m()), "to the edge of the sand", true));
    out.add(start);
    out.add(
        window == null
            ? new Figure("Works from", "nowhere", "no mark is good enough", false)
            : window(window));
    out.add(
        new Figure(
            "Chance", InHundred.said(advice.inHundred()), "that the rep counts", true));
    return out;
  }

  /** Metres fit on one line; feet and inches do not. */
  private Figure window(Window window) {
    String from = unit.write(window.min_m());
    String to = unit.write(window.max_m());
    return unit == LengthUnit.METRES
        ? new Figure("Works from", from.replace(" m", "") + "–" + to, "where the tape may lie", true)
        : new Figure("Works from", from, "to " + to, false);
  }
}
