package boundwright.card;

/** What a card is printed on, upright (ISO 216; published). Sizes in millimetres: page names would be passed over silently. */
public enum Paper {
  /** 148 mm x 210 mm: folds into a pocket. */
  A5(148, 210, 8.2),
  /** 210 mm x 297 mm. */
  A4(210, 297, 9.4);

  private final int width_mm;
  private final int height_mm;
  private final double type_pt;

  Paper(int width_mm, int height_mm, double type_pt) {
    this.width_mm = width_mm;
    this.height_mm = height_mm;
    this.type_pt = type_pt;
  }

  /** Width of the page [mm]. */
  public int width_mm() {
    return width_mm;
  }

  /** Height of the page [mm]. */
  public int height_mm() {
    return height_mm;
  }

  /** Size of the running type [pt]; everything else on the card is a multiple of it. */
  double type_pt() {
    return type_pt;
  }
}
