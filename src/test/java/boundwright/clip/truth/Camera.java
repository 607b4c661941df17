package boundwright.clip.truth;

import boundwright.clip.track.Spot;

/**
 * A phone beside the runway: central projection with a little turn, tilt, roll and barrel of the lens.
 *
 * @param x where it stands along the runway [m]
 * @param distance from the athlete's line [m]; on the athlete's right when they run to the right of the picture
 * @param height above the ground [m]
 * @param toTheRight whether the athlete runs to the right of the picture
 * @param turnDeg turned from square [degrees]
 * @param tiltDeg looking down [degrees]
 * @param rollDeg rolled [degrees]
 * @param focal focal length [px]
 * @param barrel radial distortion: r (1 + barrel r^2) in units of the focal length
 * @param width of the picture [px]
 * @param high of the picture [px]
 */
public record Camera(
    double x, double distance, double height, boolean toTheRight, double turnDeg, double tiltDeg, double rollDeg, double focal,
    double barrel, int width, int high) {

  /** The picture point of (forward, up, athlete's right) in metres. */
  public Spot project(double fx, double fy, double fz) {
    double side = toTheRight ? 1 : -1;
    double px = side * (fx - x);
    double py = fy - height;
    double pz = distance - side * fz;
    double c = Math.cos(Math.toRadians(turnDeg));
    double s = Math.sin(Math.toRadians(turnDeg));
    double qx = c * px - s * pz;
    double qz = s * px + c * pz;
    c = Math.cos(Math.toRadians(tiltDeg));
    s = Math.sin(Math.toRadians(tiltDeg));
    double qy = c * py + s * qz;
    qz = -s * py + c * qz;
    c = Math.cos(Math.toRadians(rollDeg));
    s = Math.sin(Math.toRadians(rollDeg));
    double u = (c * qx - s * qy) / qz;
    double v = (s * qx + c * qy) / qz;
    double r = 1 + barrel * (u * u + v * v);
    return new Spot(width / 2.0 + focal * r * u, high / 2.0 - focal * r * v);
  }

  /** Whether a picture point lies in the picture. */
  public boolean sees(Spot s) {
    return s.x() >= 0 && s.x() < width && s.y() >= 0 && s.y() < high;
  }
}
