package boundwright.web.athlete;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.footfall.LegBalance;
import boundwright.footfall.Routine;
import boundwright.footfall.Sequence;
import boundwright.picture.strip.RunwayStrip;
import boundwright.quantity.RefusedException;
import boundwright.readiness.JudgedReps;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import boundwright.store.Workbench;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTrends;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Lays out the main screen: asks the rooms below for marks, strip, sets and the newest reps. */
final class WorkDesk {
  private static final int RECENT = 12;

  private final Workbench bench;
  private final GuardDesk guard;

  WorkDesk(Workbench bench) {
    this.bench = bench;
    this.guard = new GuardDesk(bench);
  }

  /** What the screen shows when its address asks for nothing: the plan's first drill that ends in sand. */
  Asked usual(Athlete athlete) {
    return usual(athlete, bench.settings().settings(), bench.settings().plan().drills());
  }

  Asked usual(Athlete athlete, CoachSettings settings, List<Drill> drills) {
    return drills.stream()
        .filter(Drill::inSand)
        .findFirst()
        .or(() -> drills.stream().findFirst())
        .map(d -> Asked.of(d, GuardDesk.steps(bench, athlete, d), settings.facility().surface()))
        .orElseGet(
            () ->
                new Asked(
                    Routine.HOP_STEP.sequence().text(),
                    String.valueOf(bench.advisor().rungs().of(athlete, Routine.HOP_STEP.sequence())),
                    settings.facility().surface(),
                    true));
  }

  /**
   * The screen.
   *
   * @param log the form as sent and refused, or null for a new one
   * @param tapeMoved whether the coach says that the tape lies at the advised mark now
   */
  WorkView look(
      Athlete athlete,
      Asked asked,
      String token,
      WorkView.@Nullable LogForm log,
      boolean tapeMoved,
      WorkView.@Nullable Said said,
      boolean redrawChooser) {
    CoachSettings settings = bench.settings().settings();
    DayPlan plan = bench.settings().plan();
    List<Rep> recent = bench.reps().recent(athlete.id(), RECENT);
    String badSequence = Form.refusal(asked.sequence(), Sequence::parse);
    String badSteps = Form.refusal(asked.steps(), t -> Athlete.checkSteps(Form.whole("number of approach steps", t)));
    String refused = "";
    WorkView.Marks marks = null;
    GuardView day = guard.look(athlete, asked, token);
    if (badSequence.isEmpty() && badSteps.isEmpty()) {
      try {
        marks = marks(athlete, asked, settings);
      } catch (RefusedException e) {
        refused = String.valueOf(e.getMessage());
      }
    }
    WorkView.LogForm form = log == null ? freshForm(asked, token, day.day().held() ? null : marks, settings, recent, tapeMoved) : log;
    return new WorkView(
        athlete, asked, settings.unit(), plan, badSequence, badSteps, refused, marks, form, said, recent, redrawChooser,
        day, catalogue(asked.steps().matches("\\d{1,2}") ? Integer.parseInt(asked.steps()) : athlete.rung()), bench.advisor().rungs());
  }

  /** The faults that can be ticked, the foot's contact as it is taught from this approach. */
  private FaultCatalogue catalogue(int steps) {
    return new FaultCatalogue(bench.looks().ownFaults(), bench.looks().teaching().at(steps));
  }

  /** What to say and do about the faults of a rep, and where to look for the beginning of each. */
  List<WorkView.Cue> cues(Rep rep) {
    FaultCatalogue catalogue = catalogue(rep.approachSteps());
    List<WorkView.Cue> out = new ArrayList<>();
    for (FaultTrends.Course course : FaultTrends.ofDrill(List.of(JudgedReps.of(rep))).courses()) {
      String look = course.firstShows().isEmpty() ? "" : course.whereToLook(rep.sequence());
      catalogue.byKey(course.key()).ifPresent(a -> out.add(new WorkView.Cue(a, look)));
    }
    return List.copyOf(out);
  }

  /** The marks that the screen advises. */
  MarkAdvice advise(Athlete athlete, Asked asked) {
    return advise(athlete, asked, bench.settings().settings());
  }

  private MarkAdvice advise(Athlete athlete, Asked asked, CoachSettings settings) {
    return bench
        .advisor()
        .advise(
            athlete,
            Sequence.parse(asked.sequence()),
            Athlete.checkSteps(Form.whole("number of approach steps", asked.steps())),
            asked.surface(),
            settings);
  }

  private WorkView.Marks marks(Athlete athlete, Asked asked, CoachSettings settings) {
    MarkAdvice advice = advise(athlete, asked, settings);
    Sequence sequence = advice.forecast().sequence();
    LegBalance.Proposal two = LegBalance.propose(List.of(sequence, sequence));
    LegBalance.ProposedSet next = two.sets().get(1);
    return new WorkView.Marks(
        advice,
        asked.sand() ? advice.warnings() : MarkAdvisor.flatWarnings(advice, asked.surface(), settings),
        asked.sand()
            ? bench.advisor().whatToLog(athlete, sequence, advice.forecast().approachSteps(), asked.surface(), settings)
            : null,
        strip(advice, asked, settings, RunwayStrip.Width.WIDE),
        strip(advice, asked, settings, RunwayStrip.Width.NARROW),
        sequence.sets(settings.setContacts()),
        settings.setContacts(),
        next.mirrored() ? next.sequence() : null,
        two.right(),
        two.left());
  }

  private static RunwayStrip strip(MarkAdvice advice, Asked asked, CoachSettings settings, RunwayStrip.Width width) {
    return asked.sand() ? RunwayStrip.of(advice, settings.unit(), width) : RunwayStrip.ofFlat(advice, settings.unit(), width);
  }

  /** The tape lies where it lay for the last rep of today, until the coach says that it was moved. */
  private WorkView.LogForm freshForm(
      Asked asked,
      String token,
      WorkView.@Nullable Marks marks,
      CoachSettings settings,
      List<Rep> recent,
      boolean tapeMoved) {
    LocalDate today = LocalDate.now(bench.clock());
    if (marks == null || !asked.sand()) {
      return new WorkView.LogForm(token, "", false, "", List.of(), false, List.of(), "");
    }
    String advised = Figures.bare(settings.unit(), marks.advice().markToSand_m());
    String tape = advised;
    if (!tapeMoved) {
      for (Rep rep : recent) {
        Double lay = rep.markToSand_m();
        if (lay != null
            && rep.date().equals(today)
            && rep.surface() == asked.surface()
            && rep.approachSteps() == marks.advice().forecast().approachSteps()
            && rep.sequence().contacts().equals(marks.sequence().contacts())) {
          tape = Figures.bare(settings.unit(), lay);
          break;
        }
      }
    }
    return new WorkView.LogForm(token, tape, !tape.equals(advised), "", List.of(), false, List.of(), "");
  }
}
