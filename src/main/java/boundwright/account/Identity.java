package boundwright.account;

/**
 * Somebody as a department's server names them for good (OpenID Connect Core 1.0, section 2: the two together, and nothing else, are unique and
 * stay).
 *
 * @param issuer the server, 1 to 500 characters
 * @param subject who, 1 to 255 ASCII characters
 */
public record Identity(String issuer, String subject) {
  private static final int LONGEST_ISSUER = 500;
  private static final int LONGEST_SUBJECT = 255;

  /** Refuses what is longer or no plain text. */
  public Identity {
    if (issuer.isEmpty() || issuer.length() > LONGEST_ISSUER || subject.length() > LONGEST_SUBJECT || !subject.matches("[\\x20-\\x7e]+")) {
      throw new IllegalArgumentException("no name of anybody: issuer of " + issuer.length() + " characters, subject of " + subject.length());
    }
  }
}
