package boundwright.web.clips;

import boundwright.clip.FoundClip;
import boundwright.clip.desk.Basis;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.desk.ClipRecord;
import boundwright.clip.desk.ClipState;
import boundwright.clip.reading.ClipReading;
import boundwright.clip.reading.Correction;
import boundwright.clip.reading.Setup;
import boundwright.footfall.Sequence;
import boundwright.quantity.RefusedException;
import boundwright.technique.FootContact;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Clips as they read now. The last few are kept in memory, so that stepping from frame to frame does not read a clip anew. */
public final class ClipLooks {
  private static final int MOST = 6;

  /**
   * A clip and what could be read of it.
   *
   * @param clip what is kept
   * @param points raw body points, or null while there are none
   * @param reading null where it could not be read
   * @param refused why there is no reading, or empty
   */
  record Look(ClipRecord clip, @Nullable FoundClip points, @Nullable ClipReading reading, String refused) {}

  private record Key(
      long id, Setup setup, List<Correction> corrections, @Nullable Sequence sequence, FootContact taught, Basis basis) {}

  private final Supplier<ClipDesk> desk;
  private final Map<Key, Look> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, Look> eldest) {
          return size() > MOST;
        }
      };

  public ClipLooks(Supplier<ClipDesk> desk) {
    this.desk = desk;
  }

  ClipDesk desk() {
    return desk.get();
  }

  /** The number in the address. */
  static long id(Context ctx) {
    return id(ctx.pathParam("id"));
  }

  static long id(String text) {
    if (!text.matches("\\d{1,18}")) {
      throw new Turned(404, "No clip has the number " + text + ". Choose one from the list.");
    }
    return Long.parseLong(text);
  }

  /** The clip of the address. */
  ClipRecord clip(long id) {
    try {
      return desk().clip(id);
    } catch (RefusedException e) {
      throw new Turned(404, String.valueOf(e.getMessage()));
    }
  }

  /** A clip with its reading. */
  Look look(long id) {
    ClipRecord clip = clip(id);
    if (clip.state() != ClipState.READ) {
      forget(id);
      return new Look(clip, null, null, "");
    }
    Key key = new Key(id, clip.setup(), clip.corrections(), clip.sequence(), desk().taught(clip), desk().basis(clip));
    Look known;
    synchronized (kept) {
      known = kept.get(key);
    }
    if (known == null) {
      known = read(clip);
      synchronized (kept) {
        kept.put(key, known);
      }
    }
    return new Look(clip, known.points, known.reading, known.refused);
  }

  private Look read(ClipRecord clip) {
    FoundClip points = desk().points(clip);
    try {
      return new Look(clip, points, desk().read(clip, points), "");
    } catch (RefusedException e) {
      return new Look(clip, points, null, String.valueOf(e.getMessage()));
    }
  }

  /** To be called when body points may have changed. */
  void forget(long id) {
    synchronized (kept) {
      kept.keySet().removeIf(k -> k.id == id);
    }
  }
}
