package boundwright.web.watching;

import boundwright.athlete.Athlete;
import boundwright.footfall.Routine;
import boundwright.picture.LadderPicture;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.Evidence.State;
import boundwright.readiness.Evidence;
import boundwright.readiness.GateAnswer;
import boundwright.readiness.RungDecision;
import boundwright.web.page.Figures;
import boundwright.web.page.Written;
import java.time.LocalDate;
import java.util.List;

/**
 * The ladder of one athlete: what the gate answers for each family of drills, and what was decided.
 *
 * @param athlete whose
 * @param answers one per family
 * @param wide the picture for a desk
 * @param narrow the same for a phone
 * @param decisions newest first
 * @param written what became of the forms
 * @param token makes a double tap one decision
 * @param today the day
 */
public record ReadyView(
    Athlete athlete,
    List<GateAnswer> answers,
    LadderPicture wide,
    LadderPicture narrow,
    List<RungDecision> decisions,
    Written written,
    String token,
    LocalDate today) {
  /** The rung that the answer leads to. */
  public int advised(GateAnswer a) {
    return switch (a.decision()) {
      case ADD_TWO_STEPS -> a.rung() + 2;
      case STAY -> a.rung();
      case GO_BACK -> a.rung() - 2;
    };
  }

  /** The rungs to choose from. */
  public List<Integer> rungs() {
    return Routine.RUNGS;
  }

  /** How many things that are asked for are there. */
  public long met(GateAnswer a) {
    return a.evidence().stream().filter(e -> e.state() == State.THERE).count();
  }

  /** How one thing is drawn. */
  public String css(Evidence e) {
    return switch (e.state()) {
      case THERE -> "met";
      case NOT_THERE -> "unmet";
      case NOT_KNOWN -> "unknown";
    };
  }

  /** The name of a family's form. */
  public String form(DrillFamily family) {
    return "decide-" + family.name();
  }

  /** The drills of a family in words. */
  public String about(DrillFamily family) {
    return switch (family) {
      case ALTERNATE -> "right, left, right";
      case SINGLE_LEG -> "all on one leg";
      case COMBINATION -> "hops and bounds together";
    };
  }

  /** A decision in words. */
  public String told(RungDecision d) {
    return d.family().label() + ": " + (d.from() == d.to() ? "stays at " + Figures.rung(d.to()) : Figures.rung(d.from()) + " to " + Figures.rung(d.to()))
        + "; the answer was " + d.gate().label();
  }

  /** A day as it is read. */
  public String day(LocalDate day) {
    return Figures.day(day, today);
  }
}
