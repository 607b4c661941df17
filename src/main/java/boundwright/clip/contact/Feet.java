package boundwright.clip.contact;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The points of both feet: each alone, and heel and toe of the foot taken as one stiff piece ({@link RigidFoot}). */
final class Feet {
  private final Map<BodyPoint, FootPath> alone = new EnumMap<>(BodyPoint.class);
  private final Map<Foot, RigidFoot.Paths> stiff = new EnumMap<>(Foot.class);
  private final Track metres;

  /** The feet of an athlete in metres, not smoothed, with the smoothed motion. */
  Feet(Track metres, Motion motion) {
    this.metres = metres;
    for (Foot foot : Foot.values()) {
      for (Joint joint : List.of(Joint.HEEL, Joint.ANKLE, Joint.TOE)) {
        FootPath path = FootPath.of(metres, motion, joint, foot);
        if (path != null) {
          alone.put(BodyPoint.of(joint, foot), path);
        }
      }
      RigidFoot.Paths paths = RigidFoot.of(alone(Joint.HEEL, foot), alone(Joint.ANKLE, foot), alone(Joint.TOE, foot));
      if (paths != null) {
        stiff.put(foot, paths);
      }
    }
  }

  /** Whether heel and toe themselves were each seen at least twice between two times [s]. */
  boolean sawBoth(Foot foot, double from, double to) {
    return seen(BodyPoint.of(Joint.HEEL, foot), from, to) >= 2 && seen(BodyPoint.of(Joint.TOE, foot), from, to) >= 2;
  }

  private long seen(BodyPoint p, double from, double to) {
    return IntStream.range(0, metres.frames()).filter(i -> metres.time(i) >= from && metres.time(i) <= to && metres.seen(p, i)).count();
  }

  /** A point by its own samples, or null where it was hardly ever seen. */
  @Nullable FootPath alone(Joint joint, Foot foot) {
    return alone.get(BodyPoint.of(joint, foot));
  }

  /** The heel by all points of the foot, alone where a part was hardly ever seen, or null where it was not seen itself. */
  @Nullable FootPath heel(Foot foot) {
    RigidFoot.Paths paths = stiff.get(foot);
    return paths == null ? alone(Joint.HEEL, foot) : paths.heel();
  }

  /** From heel to toe along the ground while the foot is flat [m]; NaN where heel and toe were hardly ever seen together. */
  double length(Foot foot) {
    RigidFoot.Paths paths = stiff.get(foot);
    return paths == null ? Double.NaN : paths.length();
  }

  /** The toe in the same way. */
  @Nullable FootPath toe(Foot foot) {
    RigidFoot.Paths paths = stiff.get(foot);
    return paths == null ? alone(Joint.TOE, foot) : paths.toe();
  }
}
