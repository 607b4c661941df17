package boundwright.web.files;

import boundwright.card.plain.PlainReport;
import org.jspecify.annotations.Nullable;

/**
 * A report to read.
 *
 * @param report what stands in it
 * @param pdf address of the same as a PDF
 * @param span from when to when, where that can be chosen; else null
 */
public record ReportView(PlainReport report, String pdf, @Nullable Span span) {
  /**
   * Two days as they are written in addresses.
   *
   * @param first from
   * @param last to
   */
  public record Span(String first, String last) {}
}
