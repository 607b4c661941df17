package boundwright.phone;

/** CRC-32 of a text of single-byte signs (ISO 3309; published), bit by bit over a table: a changed or cut text is noticed. */
final class CheckSum {
  private static final int[] TABLE = new int[256];

  static {
    for (int i = 0; i < TABLE.length; i++) {
      int c = i;
      for (int bit = 0; bit < 8; bit++) {
        c = (c & 1) == 0 ? c >>> 1 : (c >>> 1) ^ 0xEDB88320;
      }
      TABLE[i] = c;
    }
  }

  private CheckSum() {}

  /** In eight hexadecimal digits; signs beyond 255 count by their lower byte. */
  static String of(String text) {
    int c = -1;
    for (int i = 0; i < text.length(); i++) {
      c = (c >>> 8) ^ TABLE[(c ^ text.charAt(i)) & 0xff];
    }
    String hex = Integer.toHexString(~c);
    return "0".repeat(8 - hex.length()) + hex;
  }
}
