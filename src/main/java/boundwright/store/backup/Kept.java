package boundwright.store.backup;

import java.nio.file.Path;
import java.time.LocalDateTime;

/**
 * A backup in the data folder.
 *
 * @param file where it is
 * @param made when, as its name says
 * @param counts what it holds
 */
public record Kept(Path file, LocalDateTime made, Counts counts) {}
