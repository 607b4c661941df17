/**
 * From a picture to the body points of the athlete in it. The networks' weights are fetched once by the npm client and
 * checked; native memory is held here and must be closed by hand. Nothing here knows of contacts or lengths.
 */
@NullMarked
package boundwright.clip.pose;

import org.jspecify.annotations.NullMarked;

