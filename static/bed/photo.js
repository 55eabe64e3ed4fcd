// A photo made small on the device: at most 1600 px on its long side and 400 kB, as JPEG.

const LONGEST = 1600;
const LARGEST = 400_000;
const QUALITIES = [0.85, 0.7, 0.55, 0.4, 0.25];

export async function smaller(file) {
  const picture = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => null);
  if (!picture) throw new Error(`${file.name}: found no picture that this tablet can read, expected a photo.`);
  for (let longest = LONGEST; longest >= 200; longest /= 2) {
    for (const quality of QUALITIES) {
      const photo = await drawn(picture, longest, quality);
      if (photo.size <= LARGEST) return photo;
    }
  }
  throw new Error(`${file.name}: found a photo that stays over 400 kB, expected a smaller one.`);
}

function drawn(picture, longest, quality) {
  const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", quality));
}
