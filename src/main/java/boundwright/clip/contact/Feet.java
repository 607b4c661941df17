package boundwright.clip.contact;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Heel and toe of both feet, each foot taken as one stiff piece where all its parts were seen ({@link RigidFoot}). */
final class Feet {
  private final Map<Foot, FootPath> heels = new EnumMap<>(Foot.class);
  private final Map<Foot, FootPath> toes = new EnumMap<>(Foot.class);
  private final Track metres;

  /** The feet of an athlete in metres, not smoothed, with the smoothed motion. */
  Feet(Track metres, Motion motion) {
    this.metres = metres;
    for (Foot f : Foot.values()) {
      RigidFoot.Paths stiff = RigidFoot.of(metres, motion, f);
      keep(heels, f, stiff == null ? FootPath.of(metres, motion, Joint.HEEL, f) : stiff.heel());
      keep(toes, f, stiff == null ? FootPath.of(metres, motion, Joint.TOE, f) : stiff.toe());
    }
  }

  private static void keep(Map<Foot, FootPath> in, Foot foot, @Nullable FootPath path) {
    if (path != null) {
      in.put(foot, path);
    }
  }

  /** Whether heel and toe themselves were each seen at least twice between two times [s]. */
  boolean sawBoth(Foot foot, double from, double to) {
    return seen(BodyPoint.of(Joint.HEEL, foot), from, to) >= 2 && seen(BodyPoint.of(Joint.TOE, foot), from, to) >= 2;
  }

  private long seen(BodyPoint p, double from, double to) {
    return IntStream.range(0, metres.frames()).filter(i -> metres.time(i) >= from && metres.time(i) <= to && metres.seen(p, i)).count();
  }

  /** The heel, or null where it was hardly ever seen. */
  @Nullable FootPath heel(Foot foot) {
    return heels.get(foot);
  }

  /** The toe, or null where it was hardly ever seen. */
  @Nullable FootPath toe(Foot foot) {
    return toes.get(foot);
  }
}
