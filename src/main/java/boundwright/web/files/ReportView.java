package boundwright.web.files;

import boundwright.card.plain.PlainReport;
import org.jspecify.annotations.Nullable;

/**
 * A report to read.
 *
 * @param label for whom it is
 * @param report what stands in it, or null where its days were refused
 * @param pdf address of the same as a PDF
 * @param span from when to when, where that can be chosen; else null
 */
public record ReportView(String label, @Nullable PlainReport report, String pdf, @Nullable Span span) {
  /**
   * Two days as they are written.
   *
   * @param first from
   * @param last to
   * @param refused why there is no report of them, or empty
   */
  public record Span(String first, String last, String refused) {}
}
