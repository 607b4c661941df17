package boundwright.clip.desk;

import boundwright.clip.film.Stretch;
import boundwright.clip.keep.FilmStore;
import boundwright.flight.Rep;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Clips that are parts of a session's film, and what they have to do with reps that were tapped at the track. */
public interface FilmParts {
  /** No clip is a part of a longer film. */
  FilmParts NONE =
      new FilmParts() {
        @Override
        public Optional<Part> of(long clipId) {
          return Optional.empty();
        }

        @Override
        public long tapped(long clipId) {
          return 0;
        }

        @Override
        public void measured(long clipId, Rep before) {}

        @Override
        public Optional<Lengths> had(long clipId) {
          return Optional.empty();
        }

        @Override
        public void restored(long clipId) {}
      };

  /** Where a clip's film lies and which part of it the clip is; empty for a clip with a film of its own. */
  Optional<Part> of(long clipId);

  /** The tapped rep that the clip shows, or 0. */
  long tapped(long clipId);

  /** Keeps what a tapped rep had before a clip's lengths were added to it, in the transaction that is open. */
  void measured(long clipId, Rep before);

  /** What a tapped rep had before a clip's lengths were added to it; empty where none were. */
  Optional<Lengths> had(long clipId);

  /** The tapped rep has again what it had. */
  void restored(long clipId);

  /**
   * A part of a film.
   *
   * @param film where it is to be brought from
   * @param stretch which part
   */
  record Part(FilmStore.Source film, Stretch stretch) {}

  /**
   * Lengths of a rep.
   *
   * @param footprints_m as in {@link Rep}
   * @param landing_m as in {@link Rep}
   */
  record Lengths(List<Double> footprints_m, @Nullable Double landing_m) {
    /** Copies the list. */
    public Lengths {
      footprints_m = List.copyOf(footprints_m);
    }
  }
}
