package boundwright.clip.body;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Joint;
import boundwright.clip.track.Motion;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;
import java.util.function.Function;

/** Angles and heights of one athlete at any time of the clip, from the smoothed motion. */
public final class Posture {
  private final Motion motion;
  private final DeLeva model;

  /** Reads {@code motion} with the segment masses of {@code model}. */
  public Posture(Motion motion, DeLeva model) {
    this.motion = motion;
    this.model = model;
  }

  /** The points at a time [m]. */
  public Function<BodyPoint, Spot> at(double time) {
    return p -> motion.at(p, time);
  }

  /** Centre of mass at a time [m]. */
  public Spot centreOfMass(double time) {
    return CentreOfMass.of(model, at(time));
  }

  /** The model's name, shown with every centre of mass. */
  public String modelLabel() {
    return CentreOfMass.label(model);
  }

  /** Trunk lean: mid-hip to mid-shoulder against the vertical, forward positive [degrees]. */
  public double trunkLeanDeg(double time) {
    return trunkLeanDeg(at(time));
  }

  /** See {@link #trunkLeanDeg(double)}. */
  public static double trunkLeanDeg(Function<BodyPoint, Spot> points) {
    Spot hip = CentreOfMass.mid(Joint.HIP, points);
    Spot shoulder = CentreOfMass.mid(Joint.SHOULDER, points);
    return Math.toDegrees(Math.atan2(shoulder.x() - hip.x(), shoulder.y() - hip.y()));
  }

  /** Thigh against straight down, forward positive: 90 is level [degrees]. */
  public double thighDeg(Foot side, double time) {
    Spot hip = motion.at(BodyPoint.of(Joint.HIP, side), time);
    Spot knee = motion.at(BodyPoint.of(Joint.KNEE, side), time);
    return Math.toDegrees(Math.atan2(knee.x() - hip.x(), hip.y() - knee.y()));
  }

  /** Height of the knee less that of the hip [m]; 0 is a level thigh. */
  public double kneeAboveHip(Foot side, double time) {
    return motion.at(BodyPoint.of(Joint.KNEE, side), time).y() - CentreOfMass.mid(Joint.HIP, at(time)).y();
  }

  /** Distance from heel to hip [m]: small when the heel comes up to the seat. */
  public double heelToHip(Foot side, double time) {
    return motion.at(BodyPoint.of(Joint.HEEL, side), time).to(CentreOfMass.mid(Joint.HIP, at(time)));
  }

  /** Angle at the ankle between shank and foot [degrees]: 90 is square, less is toe up. */
  public double ankleDeg(Foot side, double time) {
    Spot knee = motion.at(BodyPoint.of(Joint.KNEE, side), time);
    Spot ankle = motion.at(BodyPoint.of(Joint.ANKLE, side), time);
    Spot heel = motion.at(BodyPoint.of(Joint.HEEL, side), time);
    Spot toe = motion.at(BodyPoint.of(Joint.TOE, side), time);
    double shank = Math.atan2(knee.y() - ankle.y(), knee.x() - ankle.x());
    double foot = Math.atan2(toe.y() - heel.y(), toe.x() - heel.x());
    double between = Math.toDegrees(shank - foot);
    return (between + 540) % 360 - 180;
  }
}
