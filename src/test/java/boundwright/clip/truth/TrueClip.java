package boundwright.clip.truth;

import boundwright.clip.scale.GroundMarks;
import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Spot;
import boundwright.clip.track.Track;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A made-up clip: the athlete, the camera, the true body points in the picture, the same as a finder would give them,
 * and the marks as a coach would click them, a pixel off.
 */
public record TrueClip(
    Skeleton athlete, Camera camera, Track truth, Track found, List<GroundMarks.Mark> marks, Spot poleFoot, Spot poleTop, double pole_m) {

  private static final List<String> SEQUENCES = List.of("RRL RRL", "RL x5", "RRLL RRLL RR", "LLL LLL", "R x6", "LLR LLR", "RRL");

  /** What the {@code k}th clip of a series shows. */
  public static Sequence sequence(int k) {
    return Sequence.parse(SEQUENCES.get(k % SEQUENCES.size()));
  }

  /** The {@code k}th clip of a series with different sequences, approaches and speeds; {@code seed} is that of its first clip. */
  public static TrueClip numbered(int k, double fps, Noise noise, boolean irregular, long seed) {
    double speed = 5.0 + 3.5 * ((k * 7) % 10) / 10.0;
    return of(sequence(k), k % 3, speed, fps, noise, irregular, seed + k);
  }

  /** Draws a clip from a seed; the camera stands 10 to 15 m away. */
  public static TrueClip of(Sequence sequence, int approachSteps, double speed, double fps, Noise noise, boolean irregular, long seed) {
    Random random = new Random(seed);
    Skeleton athlete = new Skeleton(sequence, approachSteps, speed, 1.0, random);
    double distance = 10 + 5 * random.nextDouble();
    double focal = 1000;
    double half = 640 / focal * distance;
    double middle = half * (0.8 + 0.3 * random.nextDouble()) + 0.5;
    Camera camera =
        new Camera(
            middle, distance, 1.2 + 0.2 * random.nextGaussian(), random.nextBoolean(), 2 * random.nextGaussian(), 1.0 * random.nextGaussian(),
            0.8 * random.nextGaussian(), focal, -0.01 * random.nextDouble(), 1280, 720);
    List<Double> times = new ArrayList<>();
    double end = athlete.mass().landingTime() + 0.25;
    for (double t = random.nextDouble() / fps; t < end; t += 1 / fps) {
      double at = irregular ? t + 0.15 / fps * (random.nextDouble() - 0.5) : t;
      double x = athlete.centreOfMass(at).x();
      boolean inside = Math.abs(x - middle) < half + 0.3;
      if (inside && (!irregular || random.nextDouble() > 0.01)) {
        times.add(at);
      }
    }
    Track.Builder b = Track.at(times.stream().mapToDouble(d -> d).toArray());
    for (int i = 0; i < times.size(); i++) {
      Body body = athlete.at(times.get(i));
      for (BodyPoint p : BodyPoint.values()) {
        double[] w = body.at(p);
        Spot s = camera.project(w[0], w[1], w[2]);
        if (camera.sees(s)) {
          b.put(p, i, s, 1);
        }
      }
    }
    Track truth = b.build();
    List<GroundMarks.Mark> marks = new ArrayList<>();
    for (int k = 0; k < 5; k++) {
      double at = Math.round(middle + half * (-0.85 + 0.425 * k));
      marks.add(new GroundMarks.Mark(clicked(camera.project(at, 0, 0), noise, random), at));
    }
    double poleX = Math.round(middle);
    Spot foot = clicked(camera.project(poleX, 0, 0), noise, random);
    Spot top = clicked(camera.project(poleX, 2, 0), noise, random);
    return new TrueClip(athlete, camera, truth, noise.over(truth, focal / distance, random), marks, foot, top, 2);
  }

  /** Whether the legs of a track are nearer to the other side's truth in a frame. */
  public boolean exchanged(Track track, int i) {
    double same = 0;
    double other = 0;
    for (Joint j : List.of(Joint.KNEE, Joint.ANKLE, Joint.TOE, Joint.HEEL)) {
      for (Foot f : Foot.values()) {
        Spot s = track.spot(BodyPoint.of(j, f), i);
        Spot a = truth.spot(BodyPoint.of(j, f), i);
        Spot b = truth.spot(BodyPoint.of(j, f.other()), i);
        if (s.known() && a.known() && b.known()) {
          same += Math.min(30, s.to(a));
          other += Math.min(30, s.to(b));
        }
      }
    }
    return other < same;
  }

  private static Spot clicked(Spot s, Noise noise, Random random) {
    return new Spot(s.x() + noise.scale() * random.nextGaussian(), s.y() + noise.scale() * random.nextGaussian());
  }
}
