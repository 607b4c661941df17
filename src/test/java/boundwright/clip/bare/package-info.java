/** Films made bare, looked at by a program apart. */
@NullMarked
package boundwright.clip.bare;

import org.jspecify.annotations.NullMarked;
