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
    Venue place = in.venue(venue);
    List<Venue> venues = new ArrayList<>();
    for (Venue v : in.venues()) {
      List<Span> closed = new ArrayList<>(v.closed());
      closed.add(new Span(day, day));
      venues.add(v.equals(place) ? new Venue(v.key(), v.name(), v.surface(), v.sand(), v.athletes(), v.hours(), closed) : v);
    }
    return new SeasonInput(in.name(), in.first(), in.last(), in.periods(), in.meets(), venues, in.squad(), in.rules());
  }

  /** An athlete is away, or held. */
  public static SeasonInput away(SeasonInput in, long athleteId, Away away) {
    return in.withSquad(in.squad().stream().map(m -> m.id() == athleteId ? m.withAway(away) : m).toList());
  }

  /** A place is open again on days on which it was said to be closed. */
  public static SeasonInput opened(SeasonInput in, String venue, Span span) {
    List<Venue> venues = new ArrayList<>();
    boolean found = false;
    for (Venue v : in.venues()) {
      List<Span> closed = new ArrayList<>(v.closed());
      found |= v.key().equals(venue) && closed.remove(span);
      venues.add(new Venue(v.key(), v.name(), v.surface(), v.sand(), v.athletes(), v.hours(), closed));
    }
    there(found);
    return new SeasonInput(in.name(), in.first(), in.last(), in.periods(), in.meets(), venues, in.squad(), in.rules());
  }

  /** An athlete is there again on days on which they were said to be away or held. */
  public static SeasonInput back(SeasonInput in, long athleteId, Away away) {
    there(in.squad().stream().anyMatch(m -> m.id() == athleteId && m.away().contains(away)));
    return in.withSquad(in.squad().stream().map(m -> m.id() == athleteId ? m.withoutAway(away) : m).toList());
  }

  private static void there(boolean found) {
    if (!found) {
      throw new RefusedException("That entry is not there any more: it was taken back or changed. Look at what stands here now.");
    }
  }

  /** The climbs of a published plan, in the order of the squad; who is new stays where they are. */
  public static List<List<Climb>> climbs(SeasonPlan plan, SeasonInput in) {
    return in.squad().stream().map(m -> plan.of(m.id()).map(SeasonPlan.Year::climbs).filter(c -> !c.isEmpty()).orElseGet(() -> standing(in, m))).toList();
  }

  private static List<Climb> standing(SeasonInput in, Member m) {
    return Arrays.stream(DrillFamily.values()).map(f -> new Climb(f, List.of(new Climb.Stage(m.steps(f), in.first())), List.of())).toList();
  }
}
