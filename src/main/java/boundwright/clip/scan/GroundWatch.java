package boundwright.clip.scan;

import boundwright.clip.Box;
import boundwright.clip.camera.CameraFollower;
import boundwright.clip.camera.CameraPath;
import boundwright.clip.camera.Gray;
import boundwright.clip.film.Picture;
import boundwright.clip.pose.Pose;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/** Follows the camera in a thread of its own while the network looks at the next frame. */
final class GroundWatch {
  private static final int WAITING = 8;

  /** A small picture on its way; the last one is null. */
  private record Job(@Nullable Gray picture, double time, Box athlete) {}

  private static final Job LAST = new Job(null, 0, new Box(0, 0, 1, 1));

  private final CameraFollower follower = new CameraFollower();
  private final BlockingQueue<Job> jobs = new ArrayBlockingQueue<>(WAITING);
  private final Thread thread = new Thread(this::work, "camera");
  private @Nullable RuntimeException trouble;
  private double taken = Double.NEGATIVE_INFINITY;
  private boolean started;

  /** Looks at a frame in which the athlete was seen. */
  void look(Picture picture, double time, Pose pose) throws InterruptedException {
    if (!CameraFollower.wants(time, taken)) {
      return;
    }
    taken = time;
    if (!started) {
      started = true;
      thread.setDaemon(true);
      thread.start();
    }
    jobs.put(new Job(Gray.of(picture), time, box(pose)));
  }

  /** The body points' box [px]. */
  private static Box box(Pose pose) {
    double left = Double.POSITIVE_INFINITY;
    double top = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double low = Double.NEGATIVE_INFINITY;
    for (BodyPoint p : BodyPoint.values()) {
      Spot s = pose.spot(p);
      left = Math.min(left, s.x());
      right = Math.max(right, s.x());
      top = Math.min(top, s.y());
      low = Math.max(low, s.y());
    }
    return new Box(left, top, right - left, low - top);
  }

  private void work() {
    try {
      for (Job job = jobs.take(); job.picture != null; job = jobs.take()) {
        if (trouble == null) {
          try {
            follower.take(job.picture, job.time, job.athlete);
          } catch (RuntimeException e) {
            trouble = e;
          }
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * What the camera did; no more frames may come.
   *
   * @param width of the film's picture [px]
   * @param height of it [px]
   * @param times of all frames of the track [s]
   */
  CameraPath path(int width, int height, double[] times) {
    end();
    if (trouble != null) {
      throw trouble;
    }
    return follower.path(width, height, times);
  }

  private void end() {
    if (!started) {
      return;
    }
    try {
      jobs.put(LAST);
      thread.join();
    } catch (InterruptedException e) {
      thread.interrupt();
      Thread.currentThread().interrupt();
    }
  }

  /** Gives up; nothing happens if the thread has ended. */
  void stop() {
    thread.interrupt();
  }
}
