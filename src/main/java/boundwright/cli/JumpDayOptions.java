package boundwright.cli;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** When a jump was, and what the coach says of it: what the commands that keep one share. */
final class JumpDayOptions {
  @Option(names = "--date", paramLabel = "DAY", description = "Day of the jump, as 2026-05-14. Default: today.")
  private @Nullable String date;

  @Option(names = "--note", paramLabel = "WORDS", description = "Your words, kept with the jump.")
  private String note = "";

  LocalDate day(Surroundings s) {
    return Choices.day(date, s);
  }

  String note() {
    return note;
  }
}
