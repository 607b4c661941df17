package boundwright.picture.film;

import boundwright.clip.reading.ClipReading;
import boundwright.clip.scale.PlaneMap;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * For each frame the map from the athlete's plane in metres to that frame's own picture. It is taken from the body points, which stand in both: in
 * pixels as filmed, and in metres as the marks and, where it was followed, the camera's movement put them. So it holds for a still camera and
 * a followed one alike.
 */
final class FrameMaps {
  private static final int FEWEST = 8;

  private final Track pixels;
  private final Track metres;
  private final Map<Integer, Optional<PlaneMap>> known = new HashMap<>();

  FrameMaps(ClipReading reading) {
    pixels = reading.athlete().pixels();
    metres = reading.athlete().metres();
  }

  /** The map of a frame of the track; empty where too little of the body was seen in it. */
  Optional<PlaneMap> of(int frame) {
    return known.computeIfAbsent(frame, this::make);
  }

  private Optional<PlaneMap> make(int frame) {
    List<PlaneMap.Known> points = new ArrayList<>();
    for (BodyPoint p : BodyPoint.values()) {
      Spot px = pixels.spot(p, frame);
      Spot m = metres.spot(p, frame);
      if (px.known() && m.known()) {
        points.add(new PlaneMap.Known(px, m));
      }
    }
    if (points.size() < FEWEST) {
      return Optional.empty();
    }
    try {
      return Optional.of(PlaneMap.through(points));
    } catch (RefusedException e) {
      return Optional.empty();
    }
  }
}
