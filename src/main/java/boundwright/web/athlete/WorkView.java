package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.Estimate;
import boundwright.quantity.LengthUnit;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.runway.Rungs;
import boundwright.technique.FaultAdvice;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTick;
import boundwright.web.page.Figures;
import boundwright.web.page.Ticks;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The main screen: one athlete, one sequence, the marks and the log.
 *
 * @param athlete who
 * @param asked what the address asks
 * @param unit the coach's unit
 * @param plan the drills of the day, as quick choices
 * @param sequenceRefused why the sequence cannot be taken, or empty
 * @param stepsRefused why the steps cannot be taken, or empty
 * @param refused why no marks can be given although the fields are right, or empty
 * @param marks the marks, or null when refused
 * @param log the form for the next rep
 * @param said what happened with the last tap, or null
 * @param recent the newest reps, newest first
 * @param redrawChooser whether the fields above the marks must be drawn again with them
 * @param guard what the guard says of the day
 * @param catalogue the faults that can be ticked
 * @param rungs from which rung a drill of the plan is done
 */
public record WorkView(
    Athlete athlete,
    Asked asked,
    LengthUnit unit,
    DayPlan plan,
    String sequenceRefused,
    String stepsRefused,
    String refused,
    @Nullable Marks marks,
    LogForm log,
    @Nullable Said said,
    List<Rep> recent,
    boolean redrawChooser,
    GuardView guard,
    FaultCatalogue catalogue,
    Rungs rungs) {

  /**
   * The marks and what goes with them.
   *
   * @param advice what was advised
   * @param warnings what the coach must know first
   * @param next what logging the next rep should add, or null
   * @param wide the picture for a desk
   * @param narrow the picture for a phone
   * @param sets the sequence cut into sets; one entry when it is short enough
   * @param setContacts where a set is cut
   * @param nextSet the set that levels the legs after this one, or null if they are level or cannot be made so
   * @param nextRight contacts on the right after both sets
   * @param nextLeft contacts on the left after both sets
   */
  public record Marks(
      MarkAdvice advice,
      List<String> warnings,
      @Nullable LogNext next,
      RunwayStrip wide,
      RunwayStrip narrow,
      List<Sequence> sets,
      int setContacts,
      @Nullable Sequence nextSet,
      int nextRight,
      int nextLeft) {
    /** The sequence in question. */
    public Sequence sequence() {
      return advice.forecast().sequence();
    }

    /** One line for every contact and one for the landing. */
    public List<Place> places() {
      List<Place> out = new ArrayList<>();
      for (int contact = 1; contact <= sequence().size(); contact++) {
        out.add(new Place(String.valueOf(contact), sequence().contacts().get(contact - 1), advice.forecast().position(contact)));
      }
      out.add(new Place("landing", null, advice.forecast().landing()));
      return out;
    }
  }

  /**
   * A line of the table of positions.
   *
   * @param name number of the contact, or {@code landing}
   * @param foot which foot, or null for the landing
   * @param at from the take-off mark [m]
   */
  public record Place(String name, @Nullable Foot foot, Estimate at) {}

  /**
   * The form for the next rep, with what was written in it.
   *
   * @param token makes a double tap one rep
   * @param tape where the tape lies, as written
   * @param tapeDiffers whether the tape lies elsewhere than now advised
   * @param landing as written
   * @param footprints as written, contact 2 first
   * @param judged whether the technique was looked at
   * @param faults what is ticked, as sent
   * @param refused why the rep was not logged, or empty
   */
  public record LogForm(
      String token,
      String tape,
      boolean tapeDiffers,
      String landing,
      List<String> footprints,
      boolean judged,
      List<String> faults,
      String refused) {
    /** What was written for a contact, 2 or more. */
    public String footprint(int contact) {
      return contact - 2 < footprints.size() ? footprints.get(contact - 2) : "";
    }
  }

  /**
   * What happened with the last tap.
   *
   * @param sentence for the coach
   * @param undo number of the rep that can be taken back, or null
   * @param cues one for each fault that was ticked
   */
  public record Said(String sentence, @Nullable Long undo, List<Cue> cues) {
    /** Without a fault. */
    Said(String sentence, @Nullable Long undo) {
      this(sentence, undo, List.of());
    }
  }

  /**
   * What to do about a fault that was just ticked.
   *
   * @param advice what to say and what to do next
   * @param look where to look for its beginning, or empty
   */
  public record Cue(FaultAdvice advice, String look) {}

  /** The same with another word of the guard. */
  WorkView with(GuardView other) {
    return new WorkView(
        athlete, asked, unit, plan, sequenceRefused, stepsRefused, refused, marks, log, said, recent, redrawChooser, other, catalogue, rungs);
  }

  /** The same, saying what happened with the last tap. */
  WorkView saying(Said what) {
    return new WorkView(
        athlete, asked, unit, plan, sequenceRefused, stepsRefused, refused, marks, log, what, recent, redrawChooser, guard, catalogue, rungs);
  }

  /** The steps from which this athlete does a drill of the plan. */
  public int steps(Drill drill) {
    return rungs.stepsFor(athlete, drill);
  }

  /** The taps. */
  public List<Outcome> outcomes() {
    return List.of(Outcome.values());
  }

  /** What is done and from where, in a line: {@code RRL x2, from 4 steps}. */
  public String chosen() {
    return asked.sequence() + ", " + (asked.steps().matches("\\d{1,2}") ? Figures.fromSteps(Integer.parseInt(asked.steps())) : "from " + asked.steps() + " steps");
  }

  /** The lesser choices in a line: how it ends, on what, and steps that are not on the ladder. */
  public String more() {
    String steps = asked.isOnRung() ? "other steps" : asked.steps() + " steps";
    return (asked.sand() ? "into sand" : "on the flat") + ", " + asked.surface().label() + "; " + steps;
  }

  /** The marks in a sentence, for those who listen. */
  public String spoken() {
    if (marks == null) {
      return "No marks.";
    }
    MarkAdvice a = marks.advice();
    String first = said == null ? "" : said.sentence() + " ";
    return asked.sand()
        ? first + "Take-off mark " + unit.write(a.markToSand_m()) + " to the sand, " + Figures.fromSteps(a.forecast().approachSteps()) + "."
        : first + "Level ground needed: " + unit.write(a.groundNeeded_m()) + ".";
  }

  /** A rep of the list in words. */
  public String told(Rep rep) {
    return result(rep, unit);
  }

  /** What came of a rep, in words. */
  public static String result(Rep rep, LengthUnit unit) {
    StringBuilder out = new StringBuilder();
    if (rep.outcome() != null) {
      out.append(rep.outcome().label());
    }
    if (rep.brokeOffAfter() != null) {
      out.append(" after contact ").append(rep.brokeOffAfter());
    }
    if (rep.markToSand_m() != null) {
      out.append(out.isEmpty() ? "" : ", ").append("tape at ").append(unit.write(rep.markToSand_m()));
    }
    if (rep.landing_m() != null) {
      out.append(out.isEmpty() ? "" : ", ").append("landed at ").append(unit.write(rep.landing_m()));
    }
    long prints = rep.footprints_m().stream().filter(f -> !f.isNaN()).count();
    if (prints > 0) {
      out.append(out.isEmpty() ? "" : ", ").append(prints).append(prints == 1 ? " footprint" : " footprints");
    }
    return out.toString();
  }

  /** What was seen of a rep's technique, in words. */
  public String technique(Rep rep) {
    if (!rep.judged()) {
      return "technique not looked at";
    }
    return rep.faults().isEmpty()
        ? "clean"
        : Ticks.kept(rep).map(t -> faults(t, catalogue)).orElseGet(() -> "cannot be read: " + String.join(", ", rep.faults()));
  }

  /** Ticks in words: {@code low knee at 3 and 5, pops up}. */
  static String faults(List<FaultTick> ticks, FaultCatalogue catalogue) {
    Map<String, List<String>> contacts = new LinkedHashMap<>();
    for (FaultTick t : ticks) {
      List<String> at = contacts.computeIfAbsent(catalogue.label(t.key()), k -> new ArrayList<>());
      if (t.contact() != null) {
        at.add(String.valueOf(t.contact()));
      }
    }
    List<String> out = new ArrayList<>();
    contacts.forEach((label, at) -> out.add(at.isEmpty() ? label : label + " at " + String.join(" and ", at)));
    return String.join(", ", out);
  }
}
