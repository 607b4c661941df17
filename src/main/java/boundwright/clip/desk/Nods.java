package boundwright.clip.desk;

import boundwright.clip.reading.ClipReading;
import boundwright.flight.Logbook;
import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a coach's nod does: the rep that a clip shows goes into the log, alone or with the one that was tapped, and comes out again. */
final class Nods {
  private final ClipRepository clips;
  private final Logbook logbook;
  private final FilmParts parts;
  private final ClipLabels labels;

  Nods(ClipRepository clips, Logbook logbook, FilmParts parts, ClipLabels labels) {
    this.clips = clips;
    this.logbook = logbook;
    this.parts = parts;
    this.labels = labels;
  }

  /**
   * Logs a rep.
   *
   * @throws RefusedException as {@link SeenRep#of}
   */
  Rep log(ClipRecord clip, ClipReading reading, List<String> faults) {
    Rep seen = SeenRep.of(clip, reading, faults);
    labels.touch(clip);
    long tapped = parts.tapped(clip.id());
    Rep kept = tapped == 0 ? logbook.log(seen) : logbook.together(changes -> TappedLengths.add(changes, parts, clip.id(), tapped, seen));
    clips.logged(clip.id(), kept.id());
    clips.contactTimes(clip.id(), SeenRep.contactTimes(reading, kept.sequence().size()));
    return kept;
  }

  /** Refuses a clip that was logged already. */
  static void refuseLogged(ClipRecord clip) {
    if (clip.repId() != 0) {
      throw new RefusedException(
          String.format(Locale.ROOT, "Clip %d was logged already, as rep %d. Undo that rep first if the clip reads differently now.", clip.id(), clip.repId()));
    }
  }

  /** Takes a logged rep back; of one that was tapped only the lengths. */
  void takeBack(ClipRecord clip) {
    labels.drop(clip.id());
    if (clip.repId() == 0) {
      return;
    }
    Optional<FilmParts.Lengths> had = parts.had(clip.id());
    if (had.isPresent()) {
      logbook.together(changes -> TappedLengths.takeBack(changes, clip.repId(), had.get()));
      parts.restored(clip.id());
    } else {
      logbook.undo(clip.athleteId(), clip.repId());
    }
    clips.logged(clip.id(), 0);
  }
}
