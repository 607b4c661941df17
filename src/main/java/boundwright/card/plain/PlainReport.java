package boundwright.card.plain;

import boundwright.picture.Drawn;
import boundwright.picture.TestPicture;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A page that somebody reads who does not coach.
 *
 * @param reader for whom
 * @param title whose, or of what
 * @param when the day, or from when to when, in words
 * @param parts one after the other
 * @param footnote at the end if not empty, for example that the squad is invented
 */
public record PlainReport(Reader reader, String title, String when, List<Part> parts, String footnote) {
  /** Who reads it. */
  public enum Reader {
    /** The athlete. */
    ATHLETE("athlete", "For you"),
    /** Those at home. */
    HOME("home", "For those at home"),
    /** The club. */
    CLUB("club", "For the club");

    private final String key;
    private final String label;

    Reader(String key, String label) {
      this.key = key;
      this.label = label;
    }

    /** The word in addresses and on the command line. */
    public String key() {
      return key;
    }

    /** As it stands above the page. */
    public String label() {
      return label;
    }
  }

  /** Takes a copy. */
  public PlainReport {
    parts = List.copyOf(parts);
  }

  /**
   * A part of the page.
   *
   * @param heading of it
   * @param lines sentences
   * @param progress the scores of a test with their error and trend, or null
   * @param shown what that picture shows, for where it cannot be drawn; empty without one
   * @param table rows of as many words as {@code columns}; empty for none
   * @param columns what stands above the rows
   */
  public record Part(String heading, List<String> lines, @Nullable Drawn<TestPicture> progress, String shown, List<String> columns, List<List<String>> table) {
    /** Takes copies. */
    public Part {
      lines = List.copyOf(lines);
      columns = List.copyOf(columns);
      table = table.stream().map(List::copyOf).toList();
    }

    /** Nothing but sentences. */
    public static Part of(String heading, List<String> lines) {
      return new Part(heading, lines, null, "", List.of(), List.of());
    }

    /** A table under a sentence or none. */
    public static Part of(String heading, List<String> lines, List<String> columns, List<List<String>> table) {
      return new Part(heading, lines, null, "", columns, table);
    }

    /** All that is said, that of the picture too. */
    public List<String> words() {
      return Stream.concat(lines.stream(), Stream.of(shown).filter(w -> !w.isEmpty())).toList();
    }
  }
}
