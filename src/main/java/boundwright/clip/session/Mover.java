package boundwright.clip.session;

import boundwright.clip.track.Spot;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One blob followed from look to look, with its places against the ground. */
final class Mover {
  /** How long places are remembered of who does not run [s]. */
  private static final double REMEMBERED_S = 3;
  /** Faster than this, in its own heights a second, it may run: a walker goes at 0.8, who bounds at 1.8 and more (worked). */
  private static final double MAY_RUN = 1.15;
  /** Over at least this time [s]. */
  private static final double OVER_S = 0.3;
  /** Slower than this it stands about. */
  private static final double STANDS = 0.3;

  /** A place: when [s], the blob, and how far the ground there had moved in the picture by then [small px]. */
  record Place(double time_s, Blob blob, double turnedX) {
    double x() {
      return blob.x() - turnedX;
    }
  }

  private final Deque<Place> places = new ArrayDeque<>();
  private double movedAt = Double.NEGATIVE_INFINITY;
  private double turnedX;
  private double turnedY;
  private @Nullable Runner runner;

  Mover(double time_s, Blob first) {
    places.add(new Place(time_s, first, 0));
    movedAt = time_s;
  }

  /** The camera turned: the ground where this one was is elsewhere in the picture. */
  void turned(double time_s, Backdrop ground) {
    double x = expected(time_s);
    Spot now = ground.carried(x, last().blob.y());
    turnedX += now.x() - x;
    turnedY += now.y() - last().blob.y();
  }

  /** How far the ground beneath has moved in the picture since this one was first seen, to the right [small px]. */
  double turnedX() {
    return turnedX;
  }

  /** The same down. */
  double turnedY() {
    return turnedY;
  }

  Place last() {
    return places.getLast();
  }

  void add(double time_s, Blob blob) {
    Place place = new Place(time_s, blob, turnedX);
    places.add(place);
    while (runner == null && place.time_s - places.getFirst().time_s > REMEMBERED_S) {
      places.removeFirst();
    }
    if (Math.abs(speed(0.8)) > STANDS) {
      movedAt = place.time_s;
    }
  }

  /** In its own heights a second over the last so many seconds, to the right positive; 0 while too little is known. */
  double speed(double over_s) {
    Place now = places.getLast();
    Place from = now;
    for (Place p : places) {
      if (now.time_s - p.time_s <= over_s + 1e-6) {
        from = p;
        break;
      }
    }
    double span = now.time_s - from.time_s;
    return span < OVER_S ? 0 : (now.x() - from.x()) / span / high();
  }

  /** Middle height of the last places [small px]. */
  double high() {
    int[] all = places.stream().mapToInt(p -> p.blob.high()).sorted().toArray();
    return all[all.length >> 1];
  }

  boolean mayRun() {
    return Math.abs(speed(0.5)) >= MAY_RUN;
  }

  /** Where it would be at a time, to the right in the picture [small px]. */
  double expected(double time_s) {
    Place p = places.getLast();
    return p.x() + speed(0.5) * high() * (time_s - p.time_s) + turnedX;
  }

  double movedAt() {
    return movedAt;
  }

  /** The remembered places, the oldest first. */
  List<Place> places() {
    return List.copyOf(places);
  }

  @Nullable Runner runner() {
    return runner;
  }

  void runner(@Nullable Runner now) {
    runner = now;
  }
}
