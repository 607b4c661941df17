package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Rep;
import boundwright.flight.RunUp;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.load.Finding;
import boundwright.phone.PhoneAthlete.Held;
import boundwright.phone.RunwayCard.Done;
import boundwright.phone.RunwayCard.Part;
import boundwright.picture.strip.RunwayStrip;
import boundwright.picture.strip.StripSvg;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.runway.CoachSettings;
import boundwright.runway.Drill;
import boundwright.runway.InHundred;
import boundwright.runway.LogNext;
import boundwright.runway.MarkAdvice;
import boundwright.runway.MarkAdvisor;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Fills the cards: the marks from {@code runway}, the word about the load from {@code load}, both as they are. */
final class Cards {
  private final CoachSettings settings;
  private final LocalDate day;

  Cards(CoachSettings settings, LocalDate day) {
    this.settings = settings;
    this.day = day;
  }

  /** The mark [m], or null where none can be given. */
  @Nullable Double mark(PhoneAthlete p, Sequence sequence, int steps, Surface surface) {
    try {
      return advise(p, sequence, steps, surface).markToSand_m();
    } catch (RefusedException e) {
      return null;
    }
  }

  /** See {@link RunwayDay#figures}. */
  List<Double> figures(PhoneAthlete p, Sequence sequence, int steps) {
    MarkAdvice a;
    try {
      a = advise(p, sequence, steps, settings.facility().surface());
    } catch (RefusedException e) {
      return List.of();
    }
    List<Double> out = new ArrayList<>();
    for (int contact = 1; contact <= sequence.size() + 1; contact++) {
      out.add(a.forecast().mean(contact));
      out.add(a.forecast().sd(contact));
    }
    out.add(a.chance());
    out.add(a.learning().near_m());
    out.add(a.learning().far_m());
    out.add(a.startToMark().p50());
    out.add(a.startToMark().halfWidth());
    out.add(a.approachSpeed().p50());
    out.add(a.runwayNeeded_m());
    out.add(a.groundNeeded_m());
    out.add(a.markToSand_m());
    if (a.window() != null) {
      out.add(a.window().min_m());
      out.add(a.window().max_m());
    }
    return List.copyOf(out);
  }

  private record Question(Sequence sequence, int steps, Surface surface) {}

  private MarkAdvice advise(PhoneAthlete p, Sequence sequence, int steps, Surface surface) {
    return p.once(new Question(sequence, steps, surface), () -> work(p, sequence, steps, surface));
  }

  private MarkAdvice work(PhoneAthlete p, Sequence sequence, int steps, Surface surface) {
    FlightModel model = p.model();
    Double first = MarkAdvisor.needsFirstMark(model) ? MarkAdvisor.firstMark(p.before(), sequence, steps, surface, settings, day) : null;
    return MarkAdvisor.advise(model, RunUp.of(p.part().profile(), steps), sequence, steps, surface, settings, day, first);
  }

  /**
   * The card.
   *
   * @param done the reps of this drill today
   * @param today all reps of today, oldest first
   * @param planned reps of this drill, 0 for none
   * @param open what is said about the load that the coach has not decided otherwise
   */
  RunwayCard card(
      PhoneAthlete p, int number, Drill drill, int steps, List<Held> done, List<Held> today, int planned, DayVerdict verdict, List<Finding> open) {
    Sequence sequence = drill.sequence();
    Surface surface = settings.facility().surface();
    boolean held = verdict.held();
    MarkAdvice advice = null;
    String reason = verdict.reason();
    if (!held) {
      try {
        advice = advise(p, sequence, steps, surface);
      } catch (RefusedException e) {
        reason = String.valueOf(e.getMessage());
      }
    }
    boolean sand = drill.inSand();
    return new RunwayCard(
        p.athlete().id(),
        number,
        p.athlete().name(),
        sequence.letters(),
        sequence.text(),
        steps,
        surface.name(),
        Athlete.fromSteps(steps),
        sand,
        held,
        reason,
        advice == null ? List.of() : parts(sand ? advice.markToSand_m() : advice.groundNeeded_m()),
        advice == null || !sand ? null : (Double) advice.markToSand_m(),
        held ? null : lay(done, sequence),
        advice != null && sand && advice.window() != null,
        advice == null || !sand ? "" : works(advice),
        advice == null || !sand ? "" : InHundred.said(advice.inHundred()),
        advice == null || steps == 0 ? List.of() : parts(advice.startToMark().p50()),
        advice == null ? "" : steps == 0 ? "from standing" : unit().writeSpread(advice.startToMark().halfWidth()),
        verdict.answer().label(),
        held ? "" : caution(verdict, open),
        verdict.roomSaid(),
        advice == null ? List.of() : sand ? advice.warnings() : MarkAdvisor.flatWarnings(advice, surface, settings),
        advice == null || !sand ? "" : next(p.model(), sequence, steps, surface),
        advice == null || !sand || advice.beginning() == null ? "" : advice.beginning().said(unit()),
        advice == null ? "" : advice.from() + " " + advice.sure(),
        strip(advice, sand, RunwayStrip.Width.NARROW),
        strip(advice, sand, RunwayStrip.Width.WIDE),
        done.size(),
        planned,
        sequence.contacts().stream().map(f -> f == Foot.RIGHT ? "R" : "L").toList(),
        told(today));
  }

  private LengthUnit unit() {
    return settings.unit();
  }

  private List<Part> parts(double metres) {
    return unit().parts(metres).stream().map(p -> new Part(p.figure(), p.unit())).toList();
  }

  /** Where the tape lay for the last rep of this drill and this side. */
  private static @Nullable Double lay(List<Held> done, Sequence sequence) {
    for (int i = done.size() - 1; i >= 0; i--) {
      Rep r = done.get(i).rep();
      if (r.markToSand_m() != null && r.sequence().contacts().equals(sequence.contacts())) {
        return r.markToSand_m();
      }
    }
    return null;
  }

  private String works(MarkAdvice advice) {
    return advice.window() == null
        ? ""
        : "works from " + unit().write(advice.window().min_m()) + " to " + unit().write(advice.window().max_m());
  }

  private static String caution(DayVerdict verdict, List<Finding> open) {
    if (open.isEmpty()) {
      return verdict.notKnownYet() && verdict.answer() == Answer.ALLOWED ? verdict.lead() : "";
    }
    Finding f = open.get(0);
    return Notes.capital(f.answer().label()) + ": " + f.said();
  }

  private String next(FlightModel model, Sequence sequence, int steps, Surface surface) {
    LogNext next = MarkAdvisor.whatToLog(model, sequence, steps, surface, settings, day);
    return next == null ? "" : next.said();
  }

  private String strip(@Nullable MarkAdvice advice, boolean sand, RunwayStrip.Width width) {
    if (advice == null) {
      return "";
    }
    return StripSvg.of(sand ? RunwayStrip.of(advice, unit(), width) : RunwayStrip.ofFlat(advice, unit(), width));
  }

  private List<Done> told(List<Held> today) {
    List<Done> out = new ArrayList<>();
    for (int i = today.size() - 1; i >= 0; i--) {
      Held h = today.get(i);
      Rep r = h.rep();
      out.add(new Done(h.of(), r.sequence().text(), r.approachSteps(), said(r), r.judged(), r.faults()));
    }
    return out;
  }

  private String said(Rep r) {
    List<String> out = new ArrayList<>();
    if (r.outcome() != null) {
      out.add(r.outcome().label() + (r.brokeOffAfter() == null ? "" : " after contact " + r.brokeOffAfter()));
    }
    if (r.markToSand_m() != null) {
      out.add("tape at " + unit().write(r.markToSand_m()));
    }
    if (r.landing_m() != null) {
      out.add("landed at " + unit().write(r.landing_m()));
    }
    long prints = r.footprints_m().stream().filter(f -> !f.isNaN()).count();
    if (prints > 0) {
      out.add(prints == 1 ? "1 footprint" : prints + " footprints");
    }
    return String.join(", ", out);
  }
}
