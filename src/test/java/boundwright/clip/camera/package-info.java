/** Following the camera, checked on films whose every frame's camera is known. */
@NullMarked
package boundwright.clip.camera;

import org.jspecify.annotations.NullMarked;
