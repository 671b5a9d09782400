# Writes opencv.json: what OpenCV makes of a picture that is given by a formula. To be run by hand.
import json
import cv2
import numpy as np

W, H, OW, OH = 64, 48, 40, 30
y, x = np.mgrid[0:H, 0:W]
img = np.stack(
    [(x * 4) % 256, (y * 5) % 256, 127.5 + 127.5 * np.sin(x / 7) * np.cos(y / 5)], axis=-1
)
img = np.clip(np.round(img), 0, 255).astype(np.uint8)
corners = np.float32([[9, 7], [56, 4], [60, 43], [5, 40]])
# Places count from the upper left corner of a pixel there, from its middle here.
half = np.float32(0.5)
target = np.float32([[0, 0], [OW, 0], [OW, OH], [0, OH]])
m = cv2.getPerspectiveTransform(corners - half, target - half)
out = cv2.warpPerspective(img, m, (OW, OH), flags=cv2.INTER_LINEAR)
json.dump(
    {"opencv": cv2.__version__, "width": OW, "height": OH, "rgb": out.reshape(-1).tolist()},
    open("opencv.json", "w"),
)
