package boundwright.clip.camera;

import boofcv.abst.feature.detect.interest.ConfigGeneralDetector;
import boofcv.abst.feature.detect.interest.ConfigShiTomasi;
import boofcv.abst.filter.derivative.ImageGradient;
import boofcv.alg.feature.detect.interest.GeneralFeatureDetector;
import boofcv.alg.tracker.klt.ConfigKlt;
import boofcv.alg.tracker.klt.KltTrackFault;
import boofcv.alg.tracker.klt.KltTracker;
import boofcv.alg.tracker.klt.PyramidKltFeature;
import boofcv.alg.tracker.klt.PyramidKltTracker;
import boofcv.alg.transform.pyramid.PyramidOps;
import boofcv.concurrency.BoofConcurrency;
import boofcv.factory.feature.detect.interest.FactoryDetectPoint;
import boofcv.factory.filter.derivative.FactoryDerivative;
import boofcv.factory.geo.ConfigHomography;
import boofcv.factory.geo.ConfigRansac;
import boofcv.factory.geo.FactoryMultiViewRobust;
import boofcv.factory.tracker.FactoryTrackerAlg;
import boofcv.factory.transform.pyramid.FactoryPyramid;
import boofcv.struct.geo.AssociatedPair;
import boofcv.struct.image.GrayF32;
import boofcv.struct.image.GrayS16;
import boofcv.struct.image.GrayU8;
import boofcv.struct.image.ImageType;
import boofcv.struct.pyramid.ConfigDiscreteLevels;
import boofcv.struct.pyramid.PyramidDiscrete;
import boundwright.clip.Box;
import georegression.struct.homography.Homography2D_F64;
import georegression.struct.point.Point2D_I16;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.ddogleg.fitting.modelset.ransac.Ransac;
import org.jspecify.annotations.Nullable;

/**
 * {@link Corners} by the BoofCV library: corners of Shi and Tomasi, followed by the pyramid of Kanade, Lucas and Tomasi, there
 * and back, and a homography by random samples. Figures of the method: trial on painted and real film.
 */
final class BoofCorners implements Corners {
  private static final int LEVELS = 4;
  /** From a guess good to two pixels the two finest pictures of the pyramid are enough. */
  private static final int NEAR_LEVELS = 2;
  /** Half the side of a corner's window [px]. */
  private static final int RADIUS = 7;
  private static final int MOST = 160;
  /** Corners weaker than this share of the strongest are left out. */
  private static final double QUALITY = 0.003;
  /** Corners of which no cell of this side may hold more than its share [px]. */
  private static final int CELL = 80;
  /** There and back again a corner must come home within this [px]. */
  private static final double HOME = 0.5;
  private static final double FITS_PX = 1.0;
  private static final int SAMPLES = 150;
  private static final int FEWEST = 12;

  static {
    // the network has the other processor
    BoofConcurrency.USE_CONCURRENT = false;
  }

  private final PyramidKltTracker<GrayU8, GrayS16> whole;
  private final PyramidKltTracker<GrayU8, GrayS16> near;
  private final ImageGradient<GrayU8, GrayS16> gradient = FactoryDerivative.sobel(GrayU8.class, GrayS16.class);
  private final Ransac<Homography2D_F64, AssociatedPair> samples;
  private @Nullable GeneralFeatureDetector<GrayU8, GrayS16> detector;

  BoofCorners() {
    ConfigKlt config = new ConfigKlt();
    config.maxPerPixelError = 25;
    config.maxIterations = 20;
    config.minPositionDelta = 0.01f;
    config.driftFracTol = Float.MAX_VALUE;
    KltTracker<GrayU8, GrayS16> klt = FactoryTrackerAlg.klt(config, GrayU8.class, GrayS16.class);
    whole = new FromLevel(klt, LEVELS);
    near = new FromLevel(klt, NEAR_LEVELS);
    samples = FactoryMultiViewRobust.homographyRansac(new ConfigHomography(), new ConfigRansac(SAMPLES, FITS_PX));
  }

  /** Follows from a level of the pyramid down. */
  private static final class FromLevel extends PyramidKltTracker<GrayU8, GrayS16> {
    private final int levels;

    FromLevel(KltTracker<GrayU8, GrayS16> klt, int levels) {
      super(klt);
      this.levels = levels;
    }

    @Override
    public boolean setDescription(PyramidKltFeature f) {
      for (int l = 0; l < f.desc.length; l++) {
        float scale = (float) image.getScale(l);
        tracker.setImage(image.getLayer(l), derivX[l], derivY[l]);
        f.desc[l].setPosition(f.x / scale, f.y / scale);
        if (!tracker.setDescription(f.desc[l])) {
          return false;
        }
      }
      return true;
    }

    @Override
    public KltTrackFault track(PyramidKltFeature f) {
      float x = f.x;
      float y = f.y;
      for (int l = Math.min(levels, f.desc.length) - 1; l >= 0; l--) {
        float scale = (float) image.getScale(l);
        tracker.setImage(image.getLayer(l), derivX[l], derivY[l]);
        f.desc[l].setPosition(x / scale, y / scale);
        KltTrackFault end = tracker.track(f.desc[l]);
        if (end != KltTrackFault.SUCCESS) {
          return end;
        }
        x = f.desc[l].x * scale;
        y = f.desc[l].y * scale;
      }
      f.setPosition(x, y);
      return KltTrackFault.SUCCESS;
    }
  }

  /** A corner of a picture. Its windows are cut out of the picture when they are first needed. */
  private static final class Corner {
    final float x;
    final float y;
    @Nullable PyramidKltFeature window;

    Corner(float x, float y) {
      this.x = x;
      this.y = y;
    }
  }

  private static final class Prepared implements Seen {
    final PyramidDiscrete<GrayU8> pyramid =
        FactoryPyramid.discreteGaussian(ConfigDiscreteLevels.levels(LEVELS), -1, 2, true, ImageType.single(GrayU8.class));
    final GrayS16[] dx = new GrayS16[LEVELS];
    final GrayS16[] dy = new GrayS16[LEVELS];
    final @Nullable Box hidden;
    /** Found in it afresh; null before anybody asked. */
    @Nullable List<Corner> fresh;
    /** Found again in it. */
    List<Corner> carried = List.of();

    Prepared(@Nullable Box hidden) {
      this.hidden = hidden;
    }

    boolean hides(float x, float y) {
      Box b = hidden;
      return b != null && x > b.x() && x < b.x() + b.width() && y > b.y() && y < b.y() + b.height();
    }

    int width() {
      return pyramid.getLayer(0).width;
    }

    int height() {
      return pyramid.getLayer(0).height;
    }
  }

  @Override
  public Seen see(Gray picture, @Nullable Box hidden) {
    Prepared out = new Prepared(hidden);
    GrayU8 image = new GrayU8(picture.width(), picture.height());
    image.data = picture.light();
    out.pyramid.process(image);
    for (int i = 0; i < LEVELS; i++) {
      out.dx[i] = new GrayS16(out.pyramid.getLayer(i).width, out.pyramid.getLayer(i).height);
      out.dy[i] = out.dx[i].createSameShape();
    }
    PyramidOps.gradient(out.pyramid, gradient, out.dx, out.dy);
    return out;
  }

  @Override
  public int corners(Seen picture) {
    return fresh((Prepared) picture).size();
  }

  private List<Corner> fresh(Prepared p) {
    List<Corner> known = p.fresh;
    if (known != null) {
      return known;
    }
    GeneralFeatureDetector<GrayU8, GrayS16> d = detector;
    if (d == null) {
      d = FactoryDetectPoint.createShiTomasi(new ConfigGeneralDetector(-1, 3, 1f), new ConfigShiTomasi(), GrayS16.class);
      detector = d;
    }
    d.process(p.pyramid.getLayer(0), p.dx[0], p.dy[0], null, null, null);
    GrayF32 strength = d.getIntensity();
    record Spotted(short x, short y, float strength) {}
    List<Spotted> all = new ArrayList<>();
    float best = 0;
    for (Point2D_I16 at : d.getMaximums().toList()) {
      if (at.x > 4 && at.y > 4 && at.x < p.width() - 5 && at.y < p.height() - 5 && !p.hides(at.x, at.y)) {
        float s = strength.get(at.x, at.y);
        best = Math.max(best, s);
        all.add(new Spotted(at.x, at.y, s));
      }
    }
    all.sort(Comparator.comparing(Spotted::strength).reversed());
    int across = p.width() / CELL + 1;
    int[] held = new int[across * (p.height() / CELL + 1)];
    int share = Math.max(4, 2 * MOST / held.length);
    List<Corner> out = new ArrayList<>();
    for (Spotted s : all) {
      if (out.size() >= MOST || s.strength < QUALITY * best) {
        break;
      }
      int cell = s.y / CELL * across + s.x / CELL;
      if (held[cell] < share) {
        held[cell]++;
        out.add(new Corner(s.x, s.y));
      }
    }
    p.fresh = out;
    return out;
  }

  @Override
  public Found again(Seen from, Seen to, int most, double[] guess, boolean isNear) {
    Prepared a = (Prepared) from;
    Prepared b = (Prepared) to;
    List<Corner> all = a.fresh == null ? a.carried : a.fresh;
    int n = Math.min(most, all.size());
    PyramidKltTracker<GrayU8, GrayS16> way = isNear ? near : whole;
    List<Corner> here = new ArrayList<>();
    way.setImage(a.pyramid, a.dx, a.dy);
    for (int i = 0; i < n; i++) {
      Corner c = all.get(i * all.size() / n);
      if (c.window == null) {
        c.window = window(c.x, c.y, LEVELS, way);
      }
      if (c.window != null) {
        here.add(c);
      }
    }
    List<AssociatedPair> pairs = new ArrayList<>();
    List<PyramidKltFeature> windows = new ArrayList<>();
    way.setImage(b.pyramid, b.dx, b.dy);
    for (Corner c : here) {
      PyramidKltFeature f = c.window;
      if (f == null) {
        continue;
      }
      double w = guess[6] * c.x + guess[7] * c.y + guess[8];
      f.setPosition((float) ((guess[0] * c.x + guess[1] * c.y + guess[2]) / w), (float) ((guess[3] * c.x + guess[4] * c.y + guess[5]) / w));
      if (way.track(f) == KltTrackFault.SUCCESS && inside(b, f.x, f.y) && !b.hides(f.x, f.y)) {
        PyramidKltFeature home = window(f.x, f.y, NEAR_LEVELS, way);
        if (home != null) {
          pairs.add(new AssociatedPair(c.x, c.y, f.x, f.y));
          windows.add(home);
        }
      }
    }
    near.setImage(a.pyramid, a.dx, a.dy);
    List<AssociatedPair> home = new ArrayList<>();
    List<Corner> kept = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      AssociatedPair p = pairs.get(i);
      PyramidKltFeature f = windows.get(i);
      f.setPosition((float) p.p1.x, (float) p.p1.y);
      if (near.track(f) == KltTrackFault.SUCCESS && Math.hypot(f.x - p.p1.x, f.y - p.p1.y) < HOME) {
        home.add(p);
        kept.add(new Corner((float) p.p2.x, (float) p.p2.y));
      }
    }
    if (b.fresh == null && kept.size() > b.carried.size()) {
      b.carried = kept;
    }
    return found(home);
  }

  private static @Nullable PyramidKltFeature window(float x, float y, int levels, PyramidKltTracker<GrayU8, GrayS16> way) {
    PyramidKltFeature f = new PyramidKltFeature(levels, RADIUS);
    f.setPosition(x, y);
    return way.setDescription(f) ? f : null;
  }

  private static boolean inside(Prepared p, float x, float y) {
    return x > 1 && y > 1 && x < p.width() - 2 && y < p.height() - 2;
  }

  private Found found(List<AssociatedPair> pairs) {
    int n = pairs.size();
    float[] a = new float[2 * n];
    float[] b = new float[2 * n];
    for (int i = 0; i < n; i++) {
      a[2 * i] = (float) pairs.get(i).p1.x;
      a[2 * i + 1] = (float) pairs.get(i).p1.y;
      b[2 * i] = (float) pairs.get(i).p2.x;
      b[2 * i + 1] = (float) pairs.get(i).p2.y;
    }
    boolean[] fits = new boolean[n];
    if (n < FEWEST || !samples.process(pairs)) {
      return new Found(a, b, fits, null);
    }
    int m = samples.getMatchSet().size();
    for (int i = 0; i < m; i++) {
      fits[samples.getInputIndex(i)] = true;
    }
    if (m < FEWEST) {
      return new Found(a, b, fits, null);
    }
    return new Found(a, b, fits, matrix(samples.getModelParameters()));
  }

  private static double[] matrix(Homography2D_F64 h) {
    return new double[] {h.a11 / h.a33, h.a12 / h.a33, h.a13 / h.a33, h.a21 / h.a33, h.a22 / h.a33, h.a23 / h.a33, h.a31 / h.a33, h.a32 / h.a33, 1};
  }
}
