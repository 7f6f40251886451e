/** How the deep zoom library is set up: no buttons, no styles of its own, still where that is wished. */
import type OpenSeadragon from 'openseadragon';
import { PlateDrawer } from './plate-drawer.ts';

export function libraryOptions(element: HTMLElement): OpenSeadragon.Options {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  return {
    element,
    drawer: [PlateDrawer, 'canvas'],
    drawerOptions: {},
    loadTilesWithAjax: true,
    showNavigationControl: false,
    showNavigator: false,
    blendTime: 0,
    animationTime: still ? 0 : 0.6,
    visibilityRatio: 0.5,
    minZoomImageRatio: 0.7,
    maxZoomPixelRatio: 8,
    maxImageCacheCount: 500,
    gestureSettingsMouse: { clickToZoom: false, dblClickToZoom: true },
    gestureSettingsTouch: { clickToZoom: false, dblClickToZoom: true, flickEnabled: !still },
    imageSmoothingEnabled: true,
  };
}

/**
 * The library adds a style element, which the page's policy refuses and reports. It does not add
 * one where it finds its own; a style of another type is never applied.
 */
export function keepStylesOut(): void {
  if (document.querySelector('style[data-openseadragon-mobile-css]')) return;
  const marker = document.createElement('style');
  marker.type = 'text/plain';
  marker.setAttribute('data-openseadragon-mobile-css', '');
  document.head.append(marker);
}
