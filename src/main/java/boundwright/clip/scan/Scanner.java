package boundwright.clip.scan;

import boundwright.clip.Box;
import boundwright.clip.FoundClip;
import boundwright.clip.film.Film;
import boundwright.clip.film.FilmFacts;
import boundwright.clip.film.Frame;
import boundwright.clip.film.Picture;
import boundwright.clip.pose.Follower;
import boundwright.clip.pose.PersonDetector;
import boundwright.clip.pose.PersonFinder;
import boundwright.clip.pose.Pose;
import boundwright.clip.pose.PoseNet;
import boundwright.clip.pose.Weights;
import boundwright.clip.track.Track;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Reads a film and follows the athlete. One thread decodes while another runs the network; the slower of the two sets the
 * pace.
 */
public final class Scanner {
  /** While nobody was found yet, the picture is searched this often [s]: a search takes many passes of the network. */
  private static final double SEARCH_EVERY_S = 0.1;
  /** During a search the thread that decodes has nothing to do, so the detector may use its processor too. */
  private static final int SEARCHERS = Math.min(2, Runtime.getRuntime().availableProcessors());
  /** An athlete not seen for this long has left the picture [s]. */
  private static final double GONE_S = 0.4;

  private final ScanOrder order;
  private final IntConsumer progress;
  private final List<Double> times = new ArrayList<>();
  private final List<@Nullable Pose> poses = new ArrayList<>();
  private final Set<String> remarks = new LinkedHashSet<>();
  private final GroundWatch camera = new GroundWatch();
  private final FrameSkip skip = new FrameSkip();
  private @Nullable Follower follower;
  private double searchedAt = Double.NEGATIVE_INFINITY;
  private @Nullable RefusedException nobody;
  private int firstFrame = -1;
  private int networkFrames;
  private int lastSeen = -1;
  private boolean left;

  private Scanner(ScanOrder order, IntConsumer progress) {
    this.order = order;
    this.progress = progress;
  }

  /**
   * Scans.
   *
   * @param progress told per mille of the film done, 0 to 1000
   * @throws RefusedException if the film cannot be read, the weights cannot be had, or nobody is in it
   */
  public static FoundClip scan(ScanOrder order, IntConsumer progress) {
    return new Scanner(order, progress).run();
  }

  private FoundClip run() {
    Path folder = order.stills();
    if (folder == null) {
      return run((frame, done) -> done.run());
    }
    try (Stills stills = new Stills(folder)) {
      return run(stills::take);
    }
  }

  /** Something that looks at every frame and says when it is done with it. */
  private interface Looker {
    void take(Frame frame, Runnable done) throws InterruptedException;
  }

  private FoundClip run(Looker everyFrame) {
    Weights weights = new Weights(order.weights());
    // one after the other: two threads that load native libraries for the first time can wait for each other for ever
    try (Film film = Film.open(order.film(), order.stretch());
        PoseNet landmarks = new PoseNet(weights.landmarks(order.size()), order.threads());
        PersonDetector detector = new PersonDetector(weights.detector(), Math.max(order.threads(), SEARCHERS));
        Ahead ahead = new Ahead(film)) {
      PersonFinder finder = new PersonFinder(detector, landmarks);
      Frame frame = ahead.next();
      while (frame != null && !left) {
        Frame now = frame;
        AtomicInteger users = new AtomicInteger(2);
        Runnable done =
            () -> {
              if (users.decrementAndGet() == 0) {
                ahead.giveBack(now);
              }
            };
        everyFrame.take(now, done);
        if (frame.index() >= order.boxFrame() || order.box() == null) {
          look(frame, landmarks, finder);
        }
        progress.accept(ahead.perMille(frame));
        done.run();
        frame = ahead.next();
      }
      ahead.stop();
      return clip(film.facts(), ahead.brokenOff());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while reading a film", e);
    } finally {
      camera.stop();
    }
  }

  private void look(Frame frame, PoseNet landmarks, PersonFinder finder) throws InterruptedException {
    Picture picture = frame.picture();
    Follower now = follower;
    if (now == null) {
      now = search(frame, landmarks, finder);
      if (now == null) {
        return;
      }
    }
    if (firstFrame < 0) {
      firstFrame = frame.index();
    }
    times.add(frame.time_s());
    if (order.skip() && skip.leavesOut(frame.time_s())) {
      poses.add(null);
      return;
    }
    networkFrames++;
    Optional<Pose> pose = now.follow(picture);
    poses.add(pose.orElse(null));
    if (pose.isPresent()) {
      lastSeen = poses.size() - 1;
      skip.saw(frame.time_s(), pose.get());
      camera.look(picture, frame.time_s(), pose.get());
    } else {
      skip.lost(frame.time_s(), now.region(), picture);
      left = lastSeen >= 0 && frame.time_s() - times.get(lastSeen) > GONE_S;
    }
  }

  private @Nullable Follower search(Frame frame, PoseNet landmarks, PersonFinder finder) {
    Box box = order.box();
    if (box == null && frame.time_s() - searchedAt < SEARCH_EVERY_S) {
      return null;
    }
    searchedAt = frame.time_s();
    try {
      PersonFinder.Answer answer = box == null ? finder.find(frame.picture()) : finder.find(frame.picture(), box);
      remarks.addAll(answer.remarks());
      follower = new Follower(landmarks, finder, answer.region());
      return follower;
    } catch (RefusedException e) {
      if (box != null) {
        throw e;
      }
      nobody = e;
      return null;
    }
  }

  private FoundClip clip(FilmFacts facts, boolean brokenOff) {
    if (lastSeen < 0) {
      throw nobody != null
          ? nobody
          : new RefusedException(
              "Nobody was seen in the film of " + facts.frames() + " frames. Draw a box round the athlete, or film from nearer.");
    }
    Track.Builder track = Track.at(times.subList(0, lastSeen + 1).stream().mapToDouble(d -> d).toArray());
    int unseen = 0;
    for (int i = 0; i <= lastSeen; i++) {
      Pose pose = poses.get(i);
      if (pose != null) {
        pose.fill(track, i, facts.width(), facts.height());
      }
      unseen += pose == null ? 1 : 0;
    }
    int lost = unseen - skip.inFlight();
    if (lost > 0) {
      remarks.add(
          String.format(
              Locale.ROOT, "In %d of %d pictures the athlete was not seen: look at the contacts near them.", lost, lastSeen + 1));
    }
    if (brokenOff) {
      remarks.add("The file breaks off before its end: what could be read was used. Copy it from the phone again to have all of it.");
    }
    Track found = track.build();
    return new FoundClip(
        facts, firstFrame, found, networkFrames, List.copyOf(remarks), camera.path(facts.width(), facts.height(), found.times()));
  }
}
