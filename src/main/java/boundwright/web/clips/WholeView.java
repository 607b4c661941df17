package boundwright.web.clips;

import boundwright.picture.film.LongPicture;
import org.jspecify.annotations.Nullable;

/**
 * The page with the whole rep in one picture.
 *
 * @param line the clip
 * @param picture the picture, or null where there is none
 * @param photo address of the photograph in it
 * @param why there is none, or empty
 * @param scaled whether lengths stand
 */
public record WholeView(ClipsView.Line line, @Nullable LongPicture picture, String photo, String why, boolean scaled) {}
