import type { Zoom } from "./read/zoom.ts";

const STEP = 1.5;

/** Looking closer without a wheel or two fingers. */
export function ZoomButtons({ zoom }: { zoom: Zoom }) {
  return (
    <span class="chart-zoom">
      <button type="button" class="plain" onClick={() => zoom.nearer(STEP)}>
        Zoom in
      </button>
      {zoom.zoomed && (
        <>
          <button type="button" class="plain" onClick={() => zoom.nearer(1 / STEP)}>
            Zoom out
          </button>
          <button type="button" class="plain" onClick={zoom.whole}>
            Whole picture
          </button>
        </>
      )}
    </span>
  );
}
