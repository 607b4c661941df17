/**
 * Where the camera looked in each frame. The background's corners are followed from frame to frame with the athlete left
 * out ({@link boundwright.clip.camera.Corners}, the one place that knows the picture library), then one solution over the
 * whole clip gives a rotation and a focal length for every frame, and from it {@link boundwright.clip.camera.CameraPath}:
 * what carries a picture point of any frame into one picture that stands still. Points are carried, never pixels.
 */
@NullMarked
package boundwright.clip.camera;

import org.jspecify.annotations.NullMarked;

