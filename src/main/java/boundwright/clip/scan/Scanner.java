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
import boundwright.clip.pose.Region;
import boundwright.clip.pose.Weights;
import boundwright.clip.track.Track;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
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
  /** Once somebody went through, others are looked for this often [s] (judgement). */
  private static final double SEARCH_AGAIN_S = 0.4;
  /** Whoever only stood for so long may be a helper: then others are looked for, this often [s] (judgement). */
  private static final double STOOD_S = 0.8;

  private final ScanOrder order;
  private final IntConsumer progress;
  private final Passes passes = new Passes();
  private final Set<String> remarks = new LinkedHashSet<>();
  private GroundWatch camera = new GroundWatch();
  private FrameSkip skip = new FrameSkip();
  private @Nullable Follower follower;
  private @Nullable Rivals rivals;
  private int rivalsFrom;
  /** The first frame of the pass that is going on. */
  private int from;
  private double searchedAt = Double.NEGATIVE_INFINITY;
  private @Nullable RefusedException nobody;
  private int firstFrame = -1;
  private int networkFrames;

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
      while (frame != null) {
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
    if (follower == null && rivals == null && !search(frame, landmarks, finder)) {
      if (firstFrame >= 0) {
        passes.add(frame.time_s(), null);
      }
      return;
    }
    if (firstFrame < 0) {
      firstFrame = frame.index();
    }
    Rivals among = rivals;
    Follower now = follower;
    if (among != null) {
      networkFrames += among.look(picture, frame.time_s());
      Pose any = among.any();
      passes.add(frame.time_s(), any);
      if (any != null) {
        camera.look(picture, frame.time_s(), any);
      }
      if (among.ready()) {
        decide(among);
      }
    } else if (now != null) {
      follow(now, frame, landmarks, finder);
    }
  }

  private void follow(Follower now, Frame frame, PoseNet landmarks, PersonFinder finder) throws InterruptedException {
    Picture picture = frame.picture();
    if (order.skip() && skip.leavesOut(frame.time_s())) {
      passes.add(frame.time_s(), null);
      return;
    }
    networkFrames++;
    Optional<Pose> pose = now.follow(picture, frame.time_s());
    // somebody else whom the athlete passed: better nothing than another's body
    passes.forget(now.mistakenFrom());
    passes.add(frame.time_s(), pose.orElse(null));
    if (pose.isPresent()) {
      skip.saw(frame.time_s(), pose.get());
      camera.look(picture, frame.time_s(), pose.get());
      lookRound(now, frame, landmarks, finder);
    } else {
      skip.lost(frame.time_s(), now.region(), picture);
      int last = passes.lastSeen(from);
      if (last >= 0 && frame.time_s() - passes.time(last) > GONE_S) {
        endPass();
      }
    }
  }

  /** Whoever only stands may be a helper: then the picture is searched for somebody who runs through. */
  private void lookRound(Follower now, Frame frame, PoseNet landmarks, PersonFinder finder) {
    double since = frame.time_s() - STOOD_S;
    if (order.box() != null || passes.time(from) > since || frame.time_s() - searchedAt < STOOD_S || passes.legSpeed(since) > LegSpeed.STANDS) {
      return;
    }
    searchedAt = frame.time_s();
    List<Follower> all = new ArrayList<>(List.of(now));
    for (Region r : finder.people(frame.picture())) {
      if (!r.same(now.region())) {
        all.add(new Follower(landmarks, finder, r));
      }
    }
    if (all.size() > 1) {
      follower = null;
      rivals = new Rivals(all);
      rivalsFrom = passes.frames();
    }
  }

  /** Takes whoever moves the legs most; if that is not whom the pass began with, another pass begins. */
  private void decide(Rivals among) {
    int best = among.best();
    if (best > 0 && rivalsFrom > from) {
      passes.put(rivalsFrom, among.poses(0));
      passes.end(from, camera, skip.inFlight());
      camera = new GroundWatch();
      skip = new FrameSkip();
      from = rivalsFrom;
    }
    passes.put(rivalsFrom, among.poses(best));
    follower = among.follower(best);
    rivals = null;
  }

  private void endPass() {
    passes.end(from, camera, skip.inFlight());
    camera = new GroundWatch();
    skip = new FrameSkip();
    from = passes.frames();
    follower = null;
  }

  /** Whether somebody was found. */
  private boolean search(Frame frame, PoseNet landmarks, PersonFinder finder) {
    @Nullable Box box = passes.none() ? order.box() : null;
    if (box == null && frame.time_s() - searchedAt < (passes.none() ? SEARCH_EVERY_S : SEARCH_AGAIN_S)) {
      return false;
    }
    searchedAt = frame.time_s();
    try {
      PersonFinder.Answer answer = box == null ? finder.find(frame.picture()) : finder.find(frame.picture(), box);
      remarks.addAll(answer.remarks());
      List<Follower> all = new ArrayList<>(List.of(new Follower(landmarks, finder, answer.region())));
      answer.others().forEach(r -> all.add(new Follower(landmarks, finder, r)));
      from = passes.frames();
      if (all.size() == 1) {
        follower = all.get(0);
      } else {
        rivals = new Rivals(all);
        rivalsFrom = from;
      }
      return true;
    } catch (RefusedException e) {
      if (box != null) {
        throw e;
      }
      nobody = e;
      return false;
    }
  }

  private FoundClip clip(FilmFacts facts, boolean brokenOff) {
    if (rivals != null) {
      decide(rivals);
    }
    if (follower != null) {
      endPass();
    }
    if (passes.none()) {
      throw nobody != null
          ? nobody
          : new RefusedException(
              "Nobody was seen in the film of " + facts.frames() + " frames. Draw a box round the athlete, or film from nearer.");
    }
    Passes.Pass read = passes.read(order.box() != null);
    passes.stopOthers(read);
    double[] times = new double[read.last() - read.first() + 1];
    Arrays.setAll(times, i -> passes.time(read.first() + i));
    Track.Builder track = Track.at(times);
    int unseen = 0;
    for (int i = 0; i < times.length; i++) {
      Pose pose = passes.pose(read.first() + i);
      if (pose != null) {
        pose.fill(track, i, facts.width(), facts.height());
      }
      unseen += pose == null ? 1 : 0;
    }
    int lost = unseen - read.inFlight();
    if (lost > 0) {
      remarks.add(
          String.format(
              Locale.ROOT, "In %d of %d pictures the athlete was not seen: look at the contacts near them.", lost, times.length));
    }
    String others = passes.others(read);
    if (others != null) {
      remarks.add(others);
    }
    if (brokenOff) {
      remarks.add("The file breaks off before its end: what could be read was used. Copy it from the phone again to have all of it.");
    }
    return new FoundClip(
        facts, firstFrame + read.first(), track.build(), networkFrames, List.copyOf(remarks),
        read.ground().path(facts.width(), facts.height(), times));
  }
}
