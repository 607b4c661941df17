package boundwright.season.mend;

import boundwright.quantity.RefusedException;
import boundwright.readiness.DrillFamily;
import boundwright.season.Away;
import boundwright.season.Climb;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Span;
import boundwright.season.Venue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A season as it is after something happened. */
public final class Happened {
  private Happened() {}

  /** A place is closed on a day, as by rain. */
  public static SeasonInput closed(SeasonInput in, String venue, LocalDate day) {
    if (in.venues().stream().noneMatch(v -> v.key().equals(venue))) {
      throw new RefusedException("The season has no place '" + venue + "'. Its places: " + String.join(", ", in.venues().stream().map(Venue::key).toList()) + ".");
    }
    List<Venue> venues = new ArrayList<>();
    for (Venue v : in.venues()) {
      List<Span> closed = new ArrayList<>(v.closed());
      closed.add(new Span(day, day));
      venues.add(v.key().equals(venue) ? new Venue(v.key(), v.name(), v.surface(), v.sand(), v.athletes(), v.hours(), closed) : v);
    }
    return new SeasonInput(in.name(), in.first(), in.last(), in.periods(), in.meets(), venues, in.squad(), in.rules());
  }

  /** An athlete is away, or held. */
  public static SeasonInput away(SeasonInput in, long athleteId, Away away) {
    return in.withSquad(in.squad().stream().map(m -> m.id() == athleteId ? m.withAway(away) : m).toList());
  }

  /** The climbs of a published plan, in the order of the squad; who is new stays where they are. */
  public static List<List<Climb>> climbs(SeasonPlan plan, SeasonInput in) {
    return in.squad().stream().map(m -> plan.of(m.id()).map(SeasonPlan.Year::climbs).filter(c -> !c.isEmpty()).orElseGet(() -> standing(in, m))).toList();
  }

  private static List<Climb> standing(SeasonInput in, Member m) {
    return Arrays.stream(DrillFamily.values()).map(f -> new Climb(f, List.of(new Climb.Stage(m.steps(f), in.first())), List.of())).toList();
  }
}
