package boundwright.store.movein;

/** What stands between two cells. */
public enum Separator {
  /** {@code ,} */
  COMMA("commas", ','),
  /** {@code ;} */
  SEMICOLON("semicolons", ';'),
  /** Tab. */
  TAB("tabs", '\t');

  private static final int LINES = 20;

  private final String label;
  private final char sign;

  Separator(String label, char sign) {
    this.label = label;
    this.sign = sign;
  }

  /** As it is called on the screen. */
  public String label() {
    return label;
  }

  char sign() {
    return sign;
  }

  /** The one that stands most often, outside quotes, in the line that has it fewest times, of the first lines; a comma where none does. */
  static Separator of(String text) {
    Separator best = COMMA;
    int most = 0;
    for (Separator s : values()) {
      int fewest = fewest(text, s.sign);
      if (fewest > most) {
        most = fewest;
        best = s;
      }
    }
    return best;
  }

  private static int fewest(String text, char sign) {
    int fewest = Integer.MAX_VALUE;
    int count = 0;
    int lines = 0;
    boolean quoted = false;
    boolean any = false;
    for (int i = 0; i <= text.length() && lines < LINES; i++) {
      char c = i == text.length() ? '\n' : text.charAt(i);
      quoted ^= c == '"';
      any |= c > ' ' || c == sign;
      count += c == sign && !quoted ? 1 : 0;
      if (c == '\n' && (!quoted || i == text.length())) {
        if (any) {
          fewest = Math.min(fewest, count);
          lines++;
        }
        count = 0;
        any = false;
      }
    }
    return lines == 0 ? 0 : fewest;
  }
}
