package boundwright.clip.body;

/**
 * Segment masses and centres after de Leva 1996 (J Biomech 29:1223-1230, table 4; read), as shares of the body's mass and
 * of the segment's length from its first-named end.
 */
@SuppressWarnings("EnumOrdinal") // the order is the index into arrays of this file only
public enum DeLeva {
  /** Women. */
  FEMALE(
      "de Leva 1996, women", new double[] {.0668, .4257, .0255, .0138, .0056, .1478, .0481, .0129},
      new double[] {.5894, .3782, .5754, .4559, .7474, .3612, .4352, .4014}, .4841),
  /** Men. */
  MALE(
      "de Leva 1996, men", new double[] {.0694, .4346, .0271, .0162, .0061, .1416, .0433, .0137},
      new double[] {.5976, .4310, .5772, .4574, .7900, .4095, .4395, .4415}, .5002);

  /** The segments of the table in its order, with their ends. */
  public enum Part {
    /** Vertex to mid-gonion. */
    HEAD,
    /** Mid-shoulder to mid-hip. */
    TRUNK,
    /** Shoulder to elbow. */
    UPPER_ARM,
    /** Elbow to wrist. */
    FOREARM,
    /** Wrist to third knuckle. */
    HAND,
    /** Hip to knee. */
    THIGH,
    /** Knee to ankle. */
    SHANK,
    /** Heel to toe tip. */
    FOOT
  }

  private final String label;
  private final double[] mass;
  private final double[] centre;
  private final double headFromC7;

  DeLeva(String label, double[] mass, double[] centre, double headFromC7) {
    this.label = label;
    this.mass = mass;
    this.centre = centre;
    this.headFromC7 = headFromC7;
  }

  /** The model's name, shown with every centre of mass. */
  public String label() {
    return label;
  }

  /** Mass of a part (of one side) as a share of the body. */
  public double mass(Part part) {
    return mass[part.ordinal()];
  }

  /** Centre of a part as a share of its length from the first-named end. */
  public double centre(Part part) {
    return centre[part.ordinal()];
  }

  /** Centre of the head as a share of vertex to C7, from the vertex. */
  public double headCentreVertexToC7() {
    return headFromC7;
  }
}
