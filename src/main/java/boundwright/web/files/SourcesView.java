package boundwright.web.files;

import boundwright.evidence.Source;
import java.util.List;

/**
 * The page of sources.
 *
 * @param sources every source with its standing
 */
public record SourcesView(List<Source> sources) {}
