package boundwright.runway;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.footfall.Routine;
import boundwright.footfall.Sequence;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.Notes;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What opens a window that is closed: fewer contacts (the longest cut that works), another rung (the nearest that
 * works, lower ones first, because speed is added only when the present speed is mastered), or onto grass with no
 * sand, where no window is needed. Each way is tried in the model, not guessed.
 */
final class WindowOpeners {
  private final FlightModel model;
  private final Surface surface;
  private final CoachSettings settings;
  private final LocalDate date;

  WindowOpeners(FlightModel model, Surface surface, CoachSettings settings, LocalDate date) {
    this.model = model;
    this.surface = surface;
    this.settings = settings;
    this.date = date;
  }

  List<Opener> find(Sequence sequence, int steps, double groundNeeded) {
    LengthUnit unit = settings.unit();
    List<Opener> out = new ArrayList<>();
    for (int n = sequence.size() - 1; n >= 1; n--) {
      Optional<Window> open = window(sequence.first(n), steps);
      if (open.isPresent()) {
        out.add(
            new Opener(
                Opener.Way.FEWER_CONTACTS,
                "Fewer contacts: the first " + Notes.counted(n, "contact") + " (" + sequence.first(n).letters() + ") "
                    + Athlete.fromSteps(steps) + " " + (n == 1 ? "works " : "work ") + marks(open.get(), unit) + "."));
        break;
      }
    }
    anotherRung(sequence, steps)
        .ifPresent(
            rung ->
                out.add(
                    new Opener(
                        Opener.Way.ANOTHER_RUNG,
                        "Another approach: " + Athlete.fromSteps(rung) + " the same sequence works "
                            + marks(window(sequence, rung).orElseThrow(), unit) + ".")));
    double flat = settings.facility().flat_m();
    out.add(
        new Opener(
            Opener.Way.ONTO_GRASS,
            groundNeeded <= flat
                ? "Onto grass with no sand: needs " + unit.write(groundNeeded) + " of level ground, run-up included."
                : "Onto grass with no sand: needs " + unit.write(groundNeeded) + ", more than the " + unit.write(flat)
                    + " of level ground you have; cut the set."));
    return out;
  }

  private Optional<Integer> anotherRung(Sequence sequence, int steps) {
    List<Integer> order = new ArrayList<>();
    Routine.RUNGS.stream().filter(r -> r < steps).sorted((a, b) -> b - a).forEach(order::add);
    Routine.RUNGS.stream().filter(r -> r > steps && model.repsAtRung(r) > 0).forEach(order::add);
    return order.stream().filter(r -> window(sequence, r).isPresent()).findFirst();
  }

  private Optional<Window> window(Sequence sequence, int steps) {
    return MarkChances.of(model.forecast(sequence, steps, surface, date), settings.marks()).window();
  }

  private static String marks(Window w, LengthUnit unit) {
    return "from " + unit.write(w.min_m()) + " to " + unit.write(w.max_m());
  }
}
