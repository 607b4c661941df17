package boundwright.clip.session;

import boundwright.clip.film.Glance;
import boundwright.clip.film.Picture;
import boundwright.clip.pose.Pose;
import boundwright.clip.pose.PoseNet;
import boundwright.clip.pose.Region;
import boundwright.clip.pose.Weights;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a session's film into reps. Small pictures tell what moves against the ground and how fast; only what may run is looked at with
 * the network. While nothing moves, only key pictures are decoded.
 */
public final class Cutter {
  /** Usual time between two looks [s]. */
  private static final double EVERY_S = 0.2;
  /** And while somebody may run [s]. */
  private static final double CLOSE_S = 1 / 15.0;
  /** Somebody who ran is looked at so much longer [s], so that the landing is seen. */
  private static final double AFTER_S = 1;
  /** Nothing has moved for so long [s]: only key pictures from here on. */
  private static final double QUIET_S = 2;
  /** Key pictures farther apart than this could miss who runs through [s]. */
  private static final double KEYS_S = 1.3;
  /** Whoever is lost for so long has gone [s]. */
  private static final double GONE_S = 0.7;
  /** A body begins with this much presence, and stays with that (judgement). */
  private static final double BEGINS = 0.8;
  private static final double STAYS = 0.5;
  /** The reading ends so long after the run [s]. */
  private static final double BEHIND_S = 0.9;
  /** How far back a cut begins when it goes on, so that the background is known again [s]. */
  private static final double WARM_S = 8;
  private static final double TOLD_S = 5;
  /** No rep is read for longer [s]. */
  private static final double LONGEST_S = 40;
  private static final int STILLS = 6;

  /** Told what was found. */
  public interface Listener {
    /** Everything that began before this time was cut [s]. */
    void reached(double time_s, double of_s);

    /** A rep; its pictures are written. */
    void rep(FilmRep rep);
  }

  private final CutOrder order;
  private final Listener listener;
  private final Glance film;
  private final PoseNet net;
  private final Cropper cropper;
  private final List<Mover> movers = new ArrayList<>();
  private @Nullable Backdrop backdrop;
  private double scale = 1;
  private int width;
  private int height;
  private double looked = Double.NEGATIVE_INFINITY;
  private double told;
  private double quietSince;
  private boolean keys;
  private double keyBefore;
  private int passes;

  private Cutter(CutOrder order, Listener listener, Glance film, PoseNet net, Cropper cropper) {
    this.order = order;
    this.listener = listener;
    this.film = film;
    this.net = net;
    this.cropper = cropper;
  }

  /**
   * Cuts.
   *
   * @return how many looks the network took
   * @throws RefusedException if the film cannot be read or the weights cannot be had
   */
  public static int cut(CutOrder order, Listener listener) {
    Weights weights = new Weights(order.weights());
    try (Glance film = Glance.open(order.film());
        PoseNet net = new PoseNet(weights.landmarks(Weights.Size.LITE), 1);
        Cropper cropper = new Cropper()) {
      Path stills = order.stills();
      if (stills != null) {
        Files.createDirectories(stills);
      }
      Cutter cutter = new Cutter(order, listener, film, net, cropper);
      cutter.run();
      return cutter.passes;
    } catch (IOException e) {
      throw new UncheckedIOException("the pictures of the session could not be written", e);
    }
  }

  private void run() {
    told = order.from_s();
    if (order.from_s() > 0) {
      film.seek(Math.max(0, order.from_s() - WARM_S));
    }
    boolean mayLeaveOut = film.keySpacing_s() <= KEYS_S;
    double stated = film.statedSeconds();
    double last = 0;
    for (double t = film.next(); !Double.isNaN(t); t = film.next()) {
      last = Math.max(last, t);
      boolean close = movers.stream().anyMatch(m -> m.runner() != null || m.mayRun());
      if (t - looked < (close ? CLOSE_S : EVERY_S) - 1e-3) {
        continue;
      }
      if (keys && somethingNew(t)) {
        keys = false;
        film.keysOnly(false);
        film.seek(keyBefore);
        quietSince = keyBefore;
        looked = keyBefore;
        continue;
      }
      if (!keys) {
        look(t);
      }
      if (!keys && mayLeaveOut && t - quietSince > QUIET_S) {
        keys = true;
        film.keysOnly(true);
      }
      keyBefore = t;
      tell(t, stated);
    }
    for (Mover m : List.copyOf(movers)) {
      end(m);
    }
    listener.reached(Math.max(last, stated), Math.max(last, stated));
  }

  private void tell(double t, double stated) {
    if (t - told >= TOLD_S && movers.stream().allMatch(m -> m.runner() == null && !m.mayRun())) {
      told = t;
      listener.reached(t, Math.max(stated, t));
    }
  }

  private Backdrop backdrop(Picture small) {
    Backdrop b = backdrop;
    if (b == null) {
      width = small.width();
      height = small.height();
      scale = (double) Math.max(film.facts().width(), film.facts().height()) / Glance.SMALL;
      b = new Backdrop(width, height);
      backdrop = b;
    }
    return b;
  }

  /** Between key pictures: whether somebody has come or gone from a place since the last. */
  private boolean somethingNew(double t) {
    Picture small = film.small();
    Backdrop b = backdrop(small);
    b.look(small, t - looked);
    looked = t;
    movers.forEach(m -> m.turned(t, b));
    List<Blob> blobs = b.lost() ? List.of() : Blob.of(b.moving(), width, height);
    for (Blob blob : blobs) {
      if (movers.stream().noneMatch(m -> Math.abs(m.last().blob().x() - blob.x()) < 0.25 * blob.high() && m.last().blob().y() - blob.y() < 0.3 * blob.high())) {
        return true;
      }
    }
    return b.lost() || b.turning();
  }

  private void look(double t) {
    Picture small = film.small();
    Backdrop b = backdrop(small);
    b.look(small, looked == Double.NEGATIVE_INFINITY ? 0 : Math.max(0, t - looked));
    looked = t;
    movers.forEach(m -> m.turned(t, b));
    List<Blob> blobs = new ArrayList<>(b.lost() ? List.of() : Blob.of(b.moving(), width, height));
    match(t, blobs);
    Picture whole = null;
    for (Mover m : List.copyOf(movers)) {
      if (m.runner() != null || m.mayRun()) {
        whole = whole == null ? film.picture() : whole;
        watch(t, m, whole);
      }
    }
    if (b.turning() || movers.stream().anyMatch(m -> t - m.movedAt() < EVERY_S)) {
      quietSince = t;
    }
  }

  private void match(double t, List<Blob> blobs) {
    List<Mover> open = new ArrayList<>(movers);
    open.sort(Comparator.comparingDouble(m -> -Math.abs(m.speed(0.5))));
    for (Mover m : open) {
      double x = m.expected(t);
      double reach = 0.9 * m.high() + 0.2 * Math.abs(m.speed(0.5)) * m.high();
      Blob near =
          blobs.stream()
              .filter(o -> Math.abs(o.x() - x) < reach && Math.abs(o.bottom() - m.last().blob().bottom()) < 0.6 * Math.max(o.high(), m.high()))
              .min(Comparator.comparingDouble(o -> Math.abs(o.x() - x) + 0.5 * Math.abs(o.high() - m.high())))
              .orElse(null);
      if (near != null) {
        blobs.remove(near);
        m.add(t, near);
      } else if (t - m.last().time_s() > GONE_S && m.runner() == null) {
        movers.remove(m);
      }
    }
    for (Blob left : blobs) {
      movers.add(new Mover(t, left));
    }
  }

  private void watch(double t, Mover m, Picture picture) {
    Runner runner = m.runner();
    boolean blobNow = m.last().time_s() == t;
    Pose pose = null;
    if (runner != null && !runner.empty()) {
      Region next = runner.last().pose().next();
      double dx = blobNow && m.last().blob().wide() < 1.5 * m.high() ? scale * m.last().blob().x() - next.x() : expected(runner, t) + scale * m.turnedX() - next.x();
      pose = body(picture, new Region(next.x() + dx, next.y(), next.side(), next.turn()), STAYS);
    }
    if (pose == null && blobNow) {
      Blob blob = m.last().blob();
      double side = 1.35 * scale * Math.max(blob.high(), Math.min(blob.wide(), 1.2 * blob.high()));
      pose = body(picture, new Region(scale * blob.x(), scale * blob.y(), side, 0), runner == null ? BEGINS : STAYS);
    }
    if (pose != null) {
      Runner now = runner == null ? new Runner() : runner;
      m.runner(now);
      now.saw(t, picture, pose, scale * m.turnedX(), scale * m.turnedY(), square -> cropper.crop(picture, square));
    }
    Runner now = m.runner();
    if (now != null && (t - now.last().time_s() > GONE_S || standsSince(now, t))) {
      end(m);
    }
  }

  private @Nullable Pose body(Picture picture, Region region, double least) {
    passes++;
    Pose pose = net.look(picture, region);
    return pose.presence() >= least && Math.hypot(pose.next().x() - region.x(), pose.next().y() - region.y()) < 0.45 * region.side() ? pose : null;
  }

  private static double expected(Runner runner, double t) {
    List<Runner.Look> looks = runner.looks();
    Runner.Look last = runner.last();
    Runner.Look before = looks.get(Math.max(0, looks.size() - 4));
    double span = last.time_s() - before.time_s();
    double v = span <= 0 ? 0 : (last.x() - before.x()) / span;
    return last.x() + v * (t - last.time_s());
  }

  /** Whether somebody has not run for a while. */
  private static boolean standsSince(Runner runner, double t) {
    List<Runner.Look> looks = runner.looks();
    Runner.Look from = looks.get(0);
    if (t - from.time_s() < AFTER_S) {
      return false;
    }
    for (Runner.Look l : looks) {
      if (t - l.time_s() >= AFTER_S) {
        from = l;
      }
    }
    return Math.abs(runner.last().x() - from.x()) < 1.7 * (runner.last().time_s() - from.time_s()) * runner.middleSize();
  }

  private void end(Mover m) {
    Runner runner = m.runner();
    m.runner(null);
    if (runner == null) {
      return;
    }
    Passage p = Passage.of(runner).orElse(null);
    if (p == null || !p.isRep() || p.from_s() < order.from_s()) {
      return;
    }
    listener.rep(rep(m, runner, p));
  }

  private FilmRep rep(Mover m, Runner runner, Passage p) {
    Beginning begins = Beginning.of(m, runner, p, scale, width, height);
    double from = begins.from_s();
    List<Double> times = new ArrayList<>();
    List<Runner.Still> all = runner.stills().stream().filter(s -> s.time_s() >= p.from_s() - 0.1 && s.time_s() <= p.to_s() + 0.5).toList();
    for (int k = 0; k < Math.min(STILLS, all.size()); k++) {
      Runner.Still s = all.get(all.size() <= STILLS ? k : Math.round((float) k * (all.size() - 1) / (STILLS - 1)));
      keep(s, from);
      times.add(s.time_s());
    }
    return new FilmRep(
        from, Math.min(from + LONGEST_S, p.to_s() + BEHIND_S), p.from_s(), begins.box(), p.toTheRight(), p.speed(), p.bounce(), p.landed(), p.sure(), runner.clothes(), times);
  }

  private void keep(Runner.Still still, double from) {
    Path stills = order.stills();
    if (stills == null) {
      return;
    }
    try {
      Files.write(CutOrder.still(stills, from, still.time_s()), still.jpeg());
    } catch (IOException e) {
      throw new UncheckedIOException("a picture of the session could not be written", e);
    }
  }
}
