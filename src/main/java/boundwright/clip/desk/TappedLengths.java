package boundwright.clip.desk;

import boundwright.flight.Rep;
import boundwright.flight.RepChanges;
import boundwright.quantity.RefusedException;
import java.util.Locale;
import java.util.Optional;

/** Lengths that a film adds to a rep that was tapped at the track. */
final class TappedLengths {
  private TappedLengths() {}

  /** The tapped rep with the lengths that were seen; what was taped stays. */
  static Rep add(RepChanges changes, FilmParts parts, long id, long tapped, Rep seen) {
    Rep had =
        changes.find(tapped).orElseThrow(() -> new RefusedException("Rep " + tapped + " was taken back. Say that this clip is a rep of its own."));
    if (!had.footprints_m().isEmpty() && had.landing_m() != null) {
      throw new RefusedException("Rep " + tapped + " has its lengths from the tape already, and they stay. Nothing was changed.");
    }
    if (had.sequence().size() != seen.sequence().size()) {
      throw new RefusedException(
          String.format(
              Locale.ROOT, "Rep %d was tapped as %s, the film shows %s. Say that this clip is a rep of its own, or put the contacts right.", tapped,
              had.sequence().text(), seen.sequence().text()));
    }
    Rep now =
        new Rep(
            had.id(), had.athleteId(), had.date(), had.sequence(), had.approachSteps(), had.surface(),
            had.footprints_m().isEmpty() ? seen.footprints_m() : had.footprints_m(), had.landing_m() == null ? seen.landing_m() : had.landing_m(),
            had.outcome(), had.brokeOffAfter(), had.markToSand_m(), had.judged(), had.faults());
    parts.measured(id, had);
    changes.measure(now);
    return now;
  }

  /** The rep as it was before. */
  static boolean takeBack(RepChanges changes, long repId, FilmParts.Lengths had) {
    Optional<Rep> now = changes.find(repId);
    now.ifPresent(
        r ->
            changes.measure(
                new Rep(
                    r.id(), r.athleteId(), r.date(), r.sequence(), r.approachSteps(), r.surface(), had.footprints_m(), had.landing_m(), r.outcome(),
                    r.brokeOffAfter(), r.markToSand_m(), r.judged(), r.faults())));
    return now.isPresent();
  }
}
