package boundwright.clip.scale;

/**
 * What it costs when a point is not in the plane that was calibrated: it seems displaced by e = x z / (D - z), outwards
 * when it is nearer to the camera (central projection; 4.1 cm at x 3, z .2, D 15 m: worked).
 */
public final class OffPlane {
  private OffPlane() {}

  /**
   * The apparent displacement [m].
   *
   * @param x distance from the foot of the camera's axis, along the plane [m]
   * @param z how far the point is in front of the plane, towards the camera [m]
   * @param distance of the camera from the plane [m], above z
   */
  public static double error(double x, double z, double distance) {
    return x * z / (distance - z);
  }

  /** A length measured in a plane {@code z} in front of the calibrated one, put right [m]. */
  public static double corrected(double measured, double z, double distance) {
    return measured * (distance - z) / distance;
  }
}
