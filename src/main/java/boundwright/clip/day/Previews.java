package boundwright.clip.day;

import boundwright.clip.desk.Basis;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.desk.SeenRep;
import boundwright.clip.reading.Setup;
import boundwright.flight.Rep;
import boundwright.quantity.RefusedException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reps as they would go into the log. The last ones are kept, so that a page of thirty rows does not read thirty clips anew. */
final class Previews {
  private static final int MOST = 200;

  /**
   * What a clip gives.
   *
   * @param seen the rep, or null
   * @param notYet why there is none, or empty
   */
  record Preview(@Nullable Rep seen, String notYet) {}

  private record Key(ClipRecord clip, Setup setup, Basis basis) {}

  private final ClipDesk clips;
  private final Map<Key, Preview> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Preview> eldest) {
          return size() > MOST;
        }
      };

  Previews(ClipDesk clips) {
    this.clips = clips;
  }

  /** The clip as it would be logged, with marks of another rep of the film where it has none. */
  Preview of(ClipRecord clip, Setup shared) {
    if (clip.state() != ClipState.READ || clip.repId() != 0) {
      return new Preview(null, clip.trouble() == null ? "" : String.valueOf(clip.trouble()));
    }
    Setup setup = clip.setup().scaled() ? clip.setup() : shared;
    Key key = new Key(clip, setup, clips.basis(clip));
    synchronized (kept) {
      Preview known = kept.get(key);
      if (known != null) {
        return known;
      }
    }
    Preview made = read(clip, setup);
    synchronized (kept) {
      kept.put(key, made);
    }
    return made;
  }

  private Preview read(ClipRecord clip, Setup setup) {
    ClipRecord marked =
        new ClipRecord(
            clip.id(), clip.athleteId(), clip.date(), clip.fileName(), clip.sequence(), clip.approachSteps(), clip.surface(), clip.markToSand_m(),
            clip.state(), clip.perMille(), clip.trouble(), clip.filmKept(), clip.box(), clip.boxFrame(), setup, clip.corrections(), clip.repId(),
            clip.added());
    try {
      return new Preview(SeenRep.of(marked, clips.read(marked, clips.points(clip)), List.of()), "");
    } catch (RefusedException e) {
      return new Preview(null, String.valueOf(e.getMessage()));
    }
  }
}
