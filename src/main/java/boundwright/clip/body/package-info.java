/** Centre of mass, trunk, foot strike and free flight, from body points in metres. */
@NullMarked
package boundwright.clip.body;

import org.jspecify.annotations.NullMarked;

